/** What pages of the learned families are made of. Rules of the reader may be made with them. */
import type { Stock } from './invented-lot.ts';
import { grouped, two, type Voice, wallParts, zoneWords } from './voice.ts';

export const LEARNED_STOCK: Stock = {
  cars: [
    ['Larkspur', 'Hauler 250', 'Foreman', 'Works', 'Base'],
    ['Tamarack', 'Stockman', 'Field Pack', 'Select 2'],
    ['Merrow', 'Sawyer 1500', 'Journeyman', 'S2'],
    ['Quillon', 'Packer', 'Town', 'High Roof'],
    ['Great Basin', 'Outfitter', 'Contractor', 'Base'],
    ['Dunmore', 'Deckhand 16', 'Plus', 'Tall Body'],
  ],
  houses: [
    {
      name: 'Copper Wash Dealer Exchange',
      host: 'copperwash.example',
      sale: 'Saturday Work Truck Sale',
      zone: 'America/Denver',
    },
    {
      name: 'Tidewrack Wholesale Auction',
      host: 'www.tidewrack.example',
      sale: 'Coastal Fleet Event',
      zone: 'America/New_York',
    },
    {
      name: 'Mesquite Fork Auto Auction',
      host: 'bid.mesquitefork.example',
      sale: 'Small Van Thursday',
      zone: 'America/Chicago',
    },
  ],
  towns: ['Ocotillo Tanks, AZ', 'Lower Sedge, NC', 'Chalk Fork, KS', 'Larch Junction, WA'],
  sellers: ['Gulfside Linen Supply', 'Orchard Street Motors', 'Panhandle Pipe & Pump'],
  titles: ['Clean', 'Clear', 'Salvage', 'Rebuilt'],
  conditions: ['Good, normal wear', 'Fair, windshield chipped', 'Runs and drives, dent at left rear'],
  drives: ['4WD', 'AWD', 'FWD', 'Rear-wheel drive'],
  gearboxes: ['Automatic', '6-speed manual', '10-speed automatic', 'CVT'],
  numbers: [(count) => String(count), (count) => `A-${count}`, (count) => `0${count + 100}`],
};

const MONEY = [
  (dollars: number) => `$${grouped(dollars)}`,
  (dollars: number) => `$${grouped(dollars)}.00`,
  (dollars: number) => `${grouped(dollars)} USD`,
  (dollars: number) => `<b>$</b>${grouped(dollars)}`,
];
const MILES = [
  (miles: number) => `${grouped(miles)} mi`,
  (miles: number) => `${grouped(miles)} miles`,
  (miles: number) => `${grouped(miles)} mi (actual)`,
  (miles: number) => `${miles} mi`,
];

const MOMENTS: Voice['moments'] = [
  (at, zone) => {
    const { weekdayShort, month, day, year, hour, minute, half } = wallParts(at, zone);
    return `${weekdayShort} ${month}/${day}/${year} ${hour}:${minute} ${half} ${zoneWords(zone).letters}`;
  },
  (at, zone) => {
    const { monthName, day, year, hour, minute, half } = wallParts(at, zone);
    return `${monthName} ${day}, ${year} at ${hour}:${minute} ${half.toLowerCase().replace('m', '.m.').replace(/^(.)/, '$1')} ${zoneWords(zone).name}`;
  },
  (at, zone) => {
    const { weekdayShort, monthShort, day, hour, minute, half } = wallParts(at, zone);
    return `${weekdayShort}, ${monthShort} ${day}, ${hour}:${minute} ${half} ${zoneWords(zone).standard}`;
  },
  (at, zone) => {
    const { monthShort, day, hour, minute, half } = wallParts(at, zone);
    return `<time datetime="${new Date(at).toISOString()}">${monthShort} ${day}, ${hour}:${minute} ${half}</time>`;
  },
  (at, zone) => {
    const { year, month, day, hour24, minute } = wallParts(at, zone);
    return `${year}-${two(month)}-${two(day)} ${two(hour24)}:${minute} ${zoneWords(zone).standard}`;
  },
];

const ENGLISH: Voice = {
  language: 'en',
  labels: {
    vehicle: ['Vehicle', 'Unit', 'Description'],
    vin: ['VIN', 'Serial no.', 'V.I.N.', 'VIN #'],
    trim: ['Trim', 'Trim level', 'Package'],
    miles: ['Mileage', 'Odometer', 'Odometer reading', 'Miles'],
    priceNow: ['Current bid', 'High bid', 'Bid now', 'On the table', 'Leading bid'],
    nextBid: ['Next bid', 'Minimum next bid', 'To stay in', 'Next ask'],
    increment: ['Increment', 'Step', 'Bid step', 'Bids move by'],
    buyNow: ['Buy now', 'Buy it now', 'Take it home', 'Take it now for'],
    close: ['Closes', 'Closing', 'Hammer falls', 'Ends', 'Bidding ends'],
    lotNumber: ['Lot', 'Lot number', 'Item', 'Ticket'],
    runNumber: ['Run', 'Run no.', 'Run order', 'Block order'],
    location: ['Location', 'Vehicle location', 'Yard', 'Sits at'],
    seller: ['Seller', 'Consigned by', 'Sold by', 'Comes from'],
    title: ['Title', 'Title status', 'Paper', 'Title brand'],
    condition: ['Condition', 'Damage', 'Shape', 'General condition'],
    drive: ['Drive', 'Drivetrain', 'Pulls with', 'Wheel drive'],
    transmission: ['Transmission', 'Gearbox', 'Trans', 'Shifts'],
  },
  money: MONEY,
  miles: MILES,
  moments: MOMENTS,
};

const FRENCH: Voice = {
  language: 'fr',
  labels: {
    vehicle: ['Véhicule'],
    vin: ['NIV', 'No de série'],
    trim: ['Version', 'Finition'],
    miles: ['Odomètre', 'Compteur'],
    priceNow: ['Enchère actuelle', 'Mise actuelle'],
    nextBid: ['Prochaine enchère', 'Prochaine mise'],
    increment: ['Palier', 'Pas d’enchère'],
    buyNow: ['Achat immédiat'],
    close: ['Clôture', 'Fin de l’encan', 'Se termine'],
    lotNumber: ['Lot', 'No de lot'],
    runNumber: ['Ordre de passage'],
    location: ['Emplacement', 'Lieu'],
    seller: ['Vendeur'],
    title: ['Titre', 'Certificat'],
    condition: ['État'],
    drive: ['Roues motrices', 'Entraînement'],
    transmission: ['Transmission', 'Boîte de vitesses'],
  },
  money: [(dollars) => `${grouped(dollars, '\u202f')}\u00a0$`, (dollars) => `${grouped(dollars, '\u00a0')} $ US`],
  miles: [(miles) => `${grouped(miles, '\u00a0')} mi`, (miles) => `${grouped(miles, '\u202f')} milles`],
  moments: [
    (at, zone) => {
      const { weekday, day, monthName, year, hour24, minute } = wallParts(at, zone, 'fr-CA');
      return `${weekday} ${day} ${monthName} ${year}, ${hour24} h ${minute} (${zoneWords(zone).standard})`;
    },
  ],
};

export const LEARNED_VOICES: readonly Voice[] = [ENGLISH, ENGLISH, ENGLISH, FRENCH];
