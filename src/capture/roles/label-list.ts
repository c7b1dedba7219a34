import type { DraftFieldName } from '../draft/draft-lot.ts';

/**
 * What a label on a page names. `other-…` are labels that matter because they are *not* what we look for: a reserve or
 * a fee must never be taken for the price, nor a preview's end for the close.
 */
export type Meaning =
  | Exclude<DraftFieldName, 'close'>
  | 'closes-at'
  | 'time-left'
  | 'price'
  | 'kilometers'
  | 'other-money'
  | 'other-time'
  | 'other';

// Words of the trade and of everyday pages, in English and, more sparingly, Spanish, French, German, Arabic and Hebrew.
const WORDS: Readonly<Record<Meaning, string>> = {
  vin: `vin; vin #; vin no; vin number; vehicle identification number; vehicle identification number (vin); vehicle id number;
    full vin; v i n; vin serial; vin/serial; vin / serial; serial number (vin); vin code; niv; numero de serie (vin);
    número de identificación; fahrgestellnummer; رقم الهيكل; رقم الشاصي; מספר שלדה`,
  year: `year; model year; yr; my; año; año modelo; année; année modèle; baujahr; modelljahr; سنة الصنع; שנת ייצור`,
  make: `make; manufacturer; vehicle make; maker; marca; marque; hersteller; marke; الشركة المصنعة; יצרן`,
  model: `model; vehicle model; model name; modelo; modèle; modell; الطراز; דגם`,
  trim: `trim; trim level; trim package; version; versión; finition; ausstattung; series`,
  miles: `odometer; odometer reading; odo; mileage; miles; mi; actual miles; miles shown; odometer (miles); odometer (mi);
    mileage (mi); mileage (miles); mileage shown; odometer reads; odometer shows; miles on odometer; vehicle mileage; current mileage; odometer miles; distance driven;
    odómetro; millaje; millas; compteur; odomètre; عداد المسافة;
    المسافة المقطوعة; מד אוץ`,
  kilometers: `kilometers; kilometers; km; kms; odometer (km); odometer (kilometers); odometer (kilometers); mileage (km);
    kilometrage; kilometraje; kilometraje (km); kilométrage; kilométrage (km); laufleistung;
    kilometerstand; קילומטראז'`,
  lotNumber: `lot; lot #; lot no; lot number; lot id; lot num; item #; item no; item number; lote; lote #; número de lote;
    lot n°; numéro de lot; los; losnummer; los-nr; رقم القطعة; رقم اللوت; מספר פריט`,
  runNumber: `run; run #; run no; run number; run order; lane/run; lane / run; lane & run; lane and run; lane - run; lane-run`,
  venueName: `venue; auction house; sold at; offered at; selling venue; sale venue; auction location`,
  sale: `sale; sale name; auction; auction name; event; event name; sale event; subasta; vente; auktion`,
  seller: `seller; seller name; sold by; consignor; consigned by; offered by; seller / consignor; vendor; vendedor; vendeur;
    verkäufer; البائع; מוכר`,
  location: `location; loc; vehicle location; located; located at; located in; location of vehicle; lot location; pickup location;
    pick-up location; pick up location; yard; site; facility; city/state; city, state; where; ubicación; lugar; lieu;
    emplacement; standort; الموقع; מיקום`,
  'closes-at': `closes; closes at; closes on; close; closing; closing at; closing time; close time; close date; closing date;
    closing date/time; closing date & time; lot closes; lot closes at; lot closes on; lot closing time; ends; ends at;
    ends on; ending; end time; end date; end date/time; end; bidding ends; bidding ends at; bidding ends on;
    bids close; bids close at; bids close on; bids end; bids due; bids due by; bidding finishes; finishes;
    bidding closes; bidding closes at; bidding closes on; bidding close; bidding end; bidding until; open until;
    auction ends; auction ends at; auction ends on; auction end; auction end time; auction end date; auction closes;
    auction closes at; auction close; sale ends; sale ends at; sale closes; sale closes at; sale end; lot ends; lot ends at;
    scheduled close; scheduled to close; scheduled end; cierra; cierra el; cierre; cierre de la subasta; termina;
    termina el; fin de la subasta; fin; fin de l'enchère; fin des enchères; fin de la vente; se termine le; clôture;
    endet; endet am; auktionsende; gebotsende; ينتهي في; ينتهي; موعد الإغلاق; נסגר ב; מועד סגירה`,
  'time-left': `time left; time remaining; remaining time; remaining; time to close; time until close; countdown; left;
    closes in; closing in; ends in; ending in; auction ends in; auction closes in; bidding ends in; bidding closes in;
    lot closes in; lot ends in; sale ends in; sale closes in; tiempo restante; cierra en; termina en; temps restant;
    se termine dans; restzeit; verbleibend; endet in; الوقت المتبقي; זמן שנותר`,
  priceNow: `current bid; current high bid; current highest bid; current price; current bid price; current bid amount;
    high bid; highest bid; high bid now; bid now; leading bid; top bid; standing bid; price now; present bid; latest bid;
    last bid; live bid; current offer; highest offer; bid stands at; bid now stands at; winning bid so far; now at; current; oferta actual; puja actual;
    precio actual; oferta más alta; enchère actuelle; mise actuelle; offre actuelle; prix actuel; plus haute enchère;
    aktuelles gebot; höchstgebot; aktueller preis; السعر الحالي; المزايدة الحالية; أعلى مزايدة; הצעה נוכחית; מחיר נוכחי`,
  price: `price; bid; asking price; list price; precio; prix; preis; السعر; מחיר`,
  nextBid: `next bid; next minimum bid; next bid amount; minimum next bid; next valid bid; min next bid; next required bid;
    asking bid; asking; ask; next ask; bid at least; you need to bid; siguiente oferta; próxima puja; prochaine enchère;
    enchère suivante; prochaine mise; nächstes gebot; المزايدة التالية`,
  increment: `increment; bid increment; bidding increment; minimum increment; min increment; min. increment; bid increments;
    step; bid step; price step; bid steps; raise by; minimum raise; min raise; incremento; incremento mínimo; palier; palier d'enchère; schritt;
    gebotsschritt; erhöhungsschritt; الحد الأدنى للزيادة; מדרגת הצעה`,
  buyNow: `buy now; buy-now; buy it now; buy now price; buy-now price; buy it now price; buyout; buyout price;
    instant purchase; instant purchase price; fixed price; take it now; purchase now; purchase now price;
    comprar ahora; cómprelo ya; cómpralo ya; compra inmediata; achat immédiat; sofortkauf; sofortpreis; اشتر الآن; קנה עכשיו`,
  title: `title; title status; title brand; title brands; title type; title / brand; title state & type; title document;
    title info; title information; title history; ownership document; type of title; título; titre; fahrzeugbrief`,
  condition: `condition; condition notes; condition summary; condition report; condition details; condition comments;
    overall condition; announcements; announcement; damage; damage notes; damages; known damage; known issues; disclosures;
    seller disclosures; remarks; inspector notes; inspection notes; seller notes; condición; daños; état; état général;
    dommages; zustand; schäden; الحالة; מצב`,
  transmission: `transmission; transmission type; trans; gearbox; transmisión; boîte de vitesses; getriebe; ناقل الحركة`,
  drive: `drive; drivetrain; drive train; drive type; driveline; driveline type; drive line; drive line type; wheel drive;
    driven wheels; tracción; traction; antrieb; نظام الدفع`,
  'other-money': `starting bid; start bid; starting price; start price; opening bid; opening price; minimum bid; min bid;
    min. bid; reserve; reserve price; estimate; estimated value; estimated retail; estimated retail value; retail;
    retail value; retail price; msrp; new price; original price; was; list; book value; market value; wholesale;
    wholesale value; average price; trade value; buy fee; buyer fee; buyer's fee; buyers fee; fee; fees; sale fee;
    online fee; document fee; doc fee; title fee; gate fee; deposit; bid deposit; transport; transport quote; shipping;
    shipping estimate; delivery; your bid; your max; your max bid; my bid; my max bid; your maximum bid; max bid;
    maximum bid; proxy bid; your proxy; autobid; sold; sold for; sold price; final bid; final price; winning bid;
    hammer; hammer price; price sold; total; total due; total price; all-in; you save; savings; payment;
    monthly payment; est. payment; tax; taxes; repair cost; repair estimate; estimated repairs; cost of repairs;
    replacement value; cash value; actual cash value; loan value; balance; purchasing power; credit; available credit;
    spending limit; precio inicial; precio de reserva; mise à prix; prix de réserve; prix de départ; startpreis; startgebot;
    mindestpreis; السعر الابتدائي`,
  'other-time': `starts; starts at; start; start time; start date; opens; opens at; opening time; begins; sale date;
    auction date; sale day; date of sale; sale starts; auction starts; auction start; auction opens; bidding opens;
    bidding starts; sale begins; inspection; inspection ends; inspection date; preview; preview ends; preview closes;
    viewing; pickup by; pick-up by; pick up by; removal deadline; removal by; payment due; payment due by; pay by;
    posted; listed; listed on; date listed; added; updated; last updated; last seen; registration closes;
    registration ends; offer expires; offer ends; offer valid until; expires; dispute window closes; arbitration ends;
    claim by; claims close; office closes; gate closes; gates close; manufactured; date of manufacture; build date;
    title date; report date; inspected on; inspected; delivery by; reopens; inicia; comienza; début; beginn`,
  other: `engine; engine type; engine size; cylinders; fuel; fuel type; body; body style; body type; color; colour;
    exterior; exterior color; interior; interior color; ext color; int color; doors; seats; keys; key; grade; stock;
    stock #; stock no; stock number; unit #; unit number; unit; views; watchers; watching; bids; bid count;
    number of bids; bidders; status; state; type; class; category; horsepower; mpg; range; warranty; tires; brakes;
    options; equipment; features; description; details; photos; documents; history; notes; runs; starts and drives;
    loss; primary damage type; airbags; gvwr; axle; axles; wheelbase; cab; bed; hours; engine hours; weight;
    drivable; contact; phone; email; share; report; reference; ref; sale type; lane; seller type; channel;
    previous owners; owners; service records; emissions; registration; plate; license plate; payment terms; quantity`,
};

const BY_LABEL: ReadonlyMap<string, Meaning> = new Map(
  (Object.keys(WORDS) as Meaning[]).flatMap((meaning) =>
    WORDS[meaning].split(';').map((label): [string, Meaning] => [labelKey(label), meaning]),
  ),
);

/** The longest label there is, in characters and with room for decoration; anything longer is no label. */
export const LABEL_LENGTH = 60;

/** What `text` means if it is nothing but a label; undefined when it is none that we know. */
export function meaningOf(text: string): Meaning | undefined {
  if (text.length > LABEL_LENGTH) return undefined;
  return BY_LABEL.get(labelKey(text)) ?? BY_LABEL.get(labelKey(text.replace(/\([^()]{0,40}\)/g, '')));
}

/** The label as it is compared: lower case, no colon or mark around it, one blank between words. */
export function labelKey(text: string): string {
  return text
    .toLowerCase()
    .replace(/[\u2018\u2019]/g, "'")
    .replace(/\./g, '')
    .replace(/\s+/g, ' ')
    .replace(/^[^\p{L}\p{N}]+/u, '')
    .replace(/[^\p{L}\p{N}#°)']+$/u, '');
}
