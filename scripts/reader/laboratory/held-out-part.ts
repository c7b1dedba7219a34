/** What pages of the held-out families are made of. No rule of the reader is made with them, and nobody looks at what they miss. */
import type { Stock } from './invented-lot.ts';
import { grouped, two, type Voice, wallParts, zoneWords } from './voice.ts';

export const HELD_OUT_STOCK: Stock = {
  cars: [
    ['Ostrander', 'Trestle 3500', 'Grade 3', 'Meadow'],
    ['Kelpie', 'Headland', 'Tideline', 'Work'],
    ['Hart-Lowell', 'Hayloft', 'Finest', 'E4'],
    ['Sundell', 'Pathmaker 20', 'Willow', 'Standard'],
    ['Pell & Orrin', 'Barrow', 'Joiner', 'Long Body'],
    ['Corvane', 'Longacre T40', 'Chairman', 'Entry'],
  ],
  houses: [
    {
      name: 'Pinedrop Remarketing',
      host: 'app.pinedrop.example',
      sale: 'Year-End Fleet Sale',
      zone: 'America/Los_Angeles',
    },
    {
      name: 'Emberlake Auto Exchange',
      host: 'emberlake-exchange.example',
      sale: 'Wednesday Mixed Units',
      zone: 'America/New_York',
    },
    { name: 'Heron Key Auctions', host: 'sales.heronkey.example', sale: 'Heavy Half Weekly', zone: 'America/Chicago' },
  ],
  towns: ['Emberlake, OH', 'Heron Key, FL', 'Gravel Bend, MT', 'Saint Orrin, LA'],
  sellers: ['Bayline Parcel Group', 'Tollgate School District', 'Halyard Equipment Leasing'],
  titles: ['Clean', 'Salvage', 'Rebuilt', 'Clear, lien released'],
  conditions: ['Average, hail on the hood', 'Above average', 'Rough, needs a battery'],
  drives: ['4x4', 'RWD', 'All-wheel drive', 'Front-wheel drive'],
  gearboxes: ['8-speed automatic', 'Manual, 5-speed', 'Auto', 'Automatic, 9-speed'],
  numbers: [(count) => `${count}B`, (count) => `WK-${count + 20}`, (count) => String(4000 + count)],
};

const MONEY = [
  (dollars: number) => `US$ ${grouped(dollars)}`,
  (dollars: number) => `$ ${grouped(dollars)}`,
  (dollars: number) => `<span>$</span><span>${grouped(dollars)}</span><sup>00</sup>`,
  (dollars: number) => `$${[...grouped(dollars)].map((one) => `<i>${one}</i>`).join('')}`,
  (dollars: number) => `${grouped(dollars)} dollars`,
];
const MILES = [
  (miles: number) => `${grouped(miles)}<small>mi</small>`,
  (miles: number) => `${grouped(miles)} mi.`,
  (miles: number) => `${grouped(miles)} Miles shown`,
  (miles: number) => `${miles} miles, exempt: no`,
];

const MOMENTS: Voice['moments'] = [
  (at, zone) => {
    const { day, monthShort, year, hour24, minute } = wallParts(at, zone);
    return `${day} ${monthShort} ${year}, ${two(hour24)}:${minute} (${zoneWords(zone).standard})`;
  },
  (at, zone) => {
    const { weekday, monthShort, day, hour, minute, half } = wallParts(at, zone);
    return `${weekday}, ${monthShort}. ${day} · ${hour}:${minute} ${half.toLowerCase()} ${zoneWords(zone).name} Time`;
  },
  (at, zone) => {
    const { month, day, year, hour, minute, half } = wallParts(at, zone);
    return `${two(month)}/${two(day)}/${year.slice(2)} ${hour}:${minute}${half.charAt(0)} ${zoneWords(zone).standard}`;
  },
  (at, zone) => {
    const { year, month, day, hour24, minute } = wallParts(at, zone);
    return `${year}-${two(month)}-${two(day)}T${two(hour24)}:${minute}${zoneWords(zone).offset}`;
  },
  (at, zone) => {
    const { weekday, hour, minute, half } = wallParts(at, zone);
    return `${weekday} at ${hour}:${minute} ${half}, ${zoneWords(zone).name} Standard Time`;
  },
];

const ENGLISH: Voice = {
  language: 'en-US',
  labels: {
    vehicle: ['What it is', 'Car', 'Year, make, model'],
    vin: ['Vehicle ID', 'VIN number', 'Frame number', 'Vehicle identification number'],
    trim: ['Trim package', 'Series', 'Edition', 'Trim name'],
    miles: ['Odometer (mi)', 'Distance covered', 'Meter shows', 'Driven so far'],
    priceNow: ['Standing bid', 'Top offer', 'Bid to beat', 'Price now', 'Now at'],
    nextBid: ['Next offer', 'You can bid', 'Lowest acceptable bid', 'Asking'],
    increment: ['Bid increment', 'Raise by', 'Steps of', 'Minimum raise'],
    buyNow: ['Instant purchase', 'Own it now', 'Buy outright', 'Skip the bidding'],
    close: ['Auction ends', 'Last call', 'Bids in by', 'Sale closes', 'Deadline'],
    lotNumber: ['Lot no.', 'Lot #', 'Lot ID', 'Catalog number'],
    runNumber: ['Lane/run', 'Run number', 'Position in sale', 'Slot'],
    location: ['Where it is', 'Parked at', 'Pick up at', 'Stored at'],
    seller: ['Consignor', 'Offered by', 'Selling dealer', 'From the fleet of'],
    title: ['Title type', 'Title/brand', 'Ownership', 'Paperwork'],
    condition: ['Overall condition', 'State of it', 'Known damage', 'Condition report says'],
    drive: ['Driven wheels', 'Drive type', 'Wheels driven', 'Axles driven'],
    transmission: ['Transmission type', 'Gears', 'Trans.', 'Shifting'],
  },
  money: MONEY,
  miles: MILES,
  moments: MOMENTS,
};

const SPANISH: Voice = {
  language: 'es',
  labels: {
    vehicle: ['Vehículo'],
    vin: ['Número de serie', 'Número de chasis', 'No. de VIN'],
    trim: ['Versión', 'Acabado'],
    miles: ['Millaje', 'Odómetro', 'Recorrido'],
    priceNow: ['Oferta actual', 'Puja actual'],
    nextBid: ['Siguiente oferta', 'Próxima puja'],
    increment: ['Incremento'],
    buyNow: ['Compra inmediata', 'Cómprelo ya'],
    close: ['Cierre', 'Termina', 'Cierra'],
    lotNumber: ['Lote', 'Número de lote'],
    runNumber: ['Orden de salida'],
    location: ['Ubicación', 'Lugar'],
    seller: ['Vendedor'],
    title: ['Título'],
    condition: ['Condición', 'Estado'],
    drive: ['Tracción'],
    transmission: ['Transmisión', 'Caja'],
  },
  money: [(dollars) => `$${grouped(dollars)} USD`, (dollars) => `US$${grouped(dollars)}`],
  miles: [(miles) => `${grouped(miles)} millas`, (miles) => `${grouped(miles)} mi`],
  moments: [
    (at, zone) => {
      const { weekday, day, monthName, year, hour, minute, half } = wallParts(at, zone, 'es-US');
      return `${weekday} ${day} de ${monthName} de ${year}, ${hour}:${minute} ${half === 'AM' ? 'a. m.' : 'p. m.'} ${zoneWords(zone).standard}`;
    },
  ],
};

export const HELD_OUT_VOICES: readonly Voice[] = [ENGLISH, ENGLISH, ENGLISH, SPANISH];
