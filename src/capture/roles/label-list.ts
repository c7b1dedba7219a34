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
    número de identificación; fahrgestellnummer; رقم الهيكل; رقم الشاصي; מספר שלדה; vehicle identification;
    vehicle identification no; vehicle id; vehicle id no; identification number; identification no; id number;
    chassis; chassis no; chassis #; chassis number; frame; frame no; frame number; frame stamp; serial; serial #;
    serial no; serial number; s/n; vin / serial no; vin/serial number; vin plate; vin stamp; unit vin;
    numéro de série; no de série; n° de série; no de serie; número de serie; número de chasis; número de bastidor;
    bastidor; chasis; no de chasis; fahrgestell-nr; fahrgestellnr; fin`,
  year: `year; model year; yr; my; año; año modelo; année; année modèle; baujahr; modelljahr; سنة الصنع; שנת ייצור; built;
    built in; year built; year made; year of make; model yr; mod yr; yr built; vehicle year; vintage;
    año de fabricación; año del modelo; année-modèle; millésime; modèle année; jahrgang`,
  make: `make; mk; manufacturer; vehicle make; maker; marca; marque; hersteller; marke; الشركة المصنعة; יצרן; brand; badge; mfr;
    mfg; mfgr; manufactured by; built by; vehicle manufacturer; car make; fabricante; fabricant; constructeur;
    fabrikat`,
  model: `model; vehicle model; model name; modelo; modèle; modell; الطراز; דגם; line; model line; nameplate; mdl; model no;
    línea`,
  trim: `trim; trim level; trim package; version; versión; finition; ausstattung; series; trim/series; trim line; trim name;
    grade level; dress; equipment line; equipment level; package; trim pkg; sub-model; submodel; edition;
    niveau de finition; ligne; versión / paquete; paquete; equipamiento; equipo; ausstattungslinie`,
  miles: `odometer; odometer reading; odo; mileage; miles; mi; actual miles; miles shown; odometer (miles); odometer (mi);
    mileage (mi); mileage (miles); mileage shown; odometer reads; odometer shows; miles on odometer; vehicle mileage;
    current mileage; odometer miles; distance driven; odómetro; millaje; millas; compteur; odomètre; عداد المسافة;
    المسافة المقطوعة; מד אוץ; odom; odo.; mls; mil; miles driven; miles run; miles so far; total miles; total mileage;
    indicated miles; indicated mileage; reads; clock; on the clock; clock reads; shown on dash; on the dash;
    dash reading; dash shows; meter; meter reading; gauge; distance covered; distance; distance travelled;
    distance traveled; has covered; has run; has gone; mi on odo; mi.; miles (odo); exact miles; exact mileage;
    mileage now; odometer now; odometer reading (mi); recorrido; lectura del odómetro; kilometraje / millaje;
    millas recorridas; lecture de l'odomètre; tachostand; meilenstand`,
  kilometers: `kilometers; km; kms; odometer (km); odometer (kilometers); mileage (km); kilometrage; kilometraje; kilometraje (km);
    kilométrage; kilométrage (km); laufleistung; kilometerstand; קילומטראז'; kilometers driven; km au compteur;
    km au tableau; kilómetros; kilómetros recorridos`,
  lotNumber: `lot; lot #; lot no; lot number; lot id; lot num; item #; item no; item number; lote; lote #; número de lote; lot n°;
    numéro de lot; los; losnummer; los-nr; رقم القطعة; رقم اللوت; מספר פריט; lot ref; lot reference; lot code; lot n;
    sale lot; lot / unit; unit / lot; item; item ref; catalog no; catalog number; catalog #; catalogue no;
    catalogue number; cat no; docket; docket no; docket number; ticket; ticket no; no; n°; nº; numéro; lot no / item;
    lote no; no de lote; n° de lot; no de lot; lote núm; katalognummer; katalog-nr; los nr; position in catalog;
    entry; entry no`,
  runNumber: `run; run #; run no; run number; run order; lane/run; lane / run; lane & run; lane and run; lane - run; lane-run;
    order in ring; ring order; block order; crossing order; order of sale; order of running; running order; run position; ring no; lane position;
    position; sequence; seq; seq no; lane/slot; lane & slot; run slot; turn; carril; carril/turno; turno; passage;
    ordre de passage; couloir; couloir/passage; voie; laufnummer`,
  venueName: `venue; auction house; sold at; offered at; selling venue; sale venue; auction location; venue name; auction company;
    auction yard; sale yard; auctioneer; hosted by; conducted by; run by; held by; sale house; marketplace;
    casa de subastas; subastador; encanteur; maison d'encan; lieu de l'encan; auktionshaus`,
  sale: `sale; sale name; auction; auction name; event; event name; sale event; subasta; vente; auktion; part of; in sale;
    sale / event; sale title; session; auction session; consignment; catalog; catalogue; evento; remate; encan;
    encan / vente; nom de la vente; nombre de la subasta; veranstaltung`,
  seller: `seller; seller name; sold by; consignor; consigned by; offered by; seller / consignor; vendor; vendedor; vendeur;
    verkäufer; البائع; מוכר; consigner; consigned for; sold for; on behalf of; for account of; account; from;
    put up by; entered by; comes from; came from; sent by; offered for; selling for; source; owner; owner of record; current owner; disposing owner;
    disposing agency; released by; fleet; from fleet; out of; vende; vendido por; consignado por; consignador; dueño;
    propietario; consignataire; consigné par; propriétaire; vendu par; eigentümer; einlieferer; anbieter`,
  location: `location; loc; vehicle location; located; located at; located in; location of vehicle; lot location; pickup location;
    pick-up location; pick up location; yard; site; facility; city/state; city, state; where; ubicación; lugar; lieu;
    emplacement; standort; الموقع; מיקום; sits at; sits in; stands at; stands in; standing at; standing in; parked at;
    parked in; kept at; kept in; stored at; stored in; held at; lying at; lies at; located in town; see it at;
    viewing at; viewable at; inspect at; view at; place of inspection; inspection place; inspection site; pick up at;
    pick up from; pickup; pickup at; pickup from; pick-up; pick-up at; collect at; collect from; collection point;
    collection; release point; town; city; place; where is it; where it is; where it sits; where it stands;
    whereabouts; lot sits at; storage yard; storage location; yard location; branch; depot; compound; patio;
    ubicado en; se encuentra en; localización; localidad; plaza; situé à; se trouve à; endroit; cour; ville; abholort;
    steht in; ort`,
  'closes-at': `closes; closes at; closes on; close; closing; closing at; closing time; close time; close date; closing date;
    closing date/time; closing date & time; lot closes; lot closes at; lot closes on; lot closing time; ends; ends at;
    ends on; ending; end time; end date; end date/time; end; bidding ends; bidding ends at; bidding ends on;
    bids close; bids close at; bids close on; bids end; bids due; bids due by; bidding finishes; finishes;
    bidding closes; bidding closes at; bidding closes on; bidding close; bidding end; bidding until; open until;
    auction ends; auction ends at; auction ends on; auction end; auction end time; auction end date; auction closes;
    auction closes at; auction close; sale ends; sale ends at; sale closes; sale closes at; sale end; lot ends;
    lot ends at; scheduled close; scheduled to close; scheduled end; cierra; cierra el; cierre; cierre de la subasta;
    termina; termina el; fin de la subasta; fin; fin de l'enchère; fin des enchères; fin de la vente; se termine le;
    clôture; endet; endet am; auktionsende; gebotsende; ينتهي في; ينتهي; موعد الإغلاق; נסגר ב; מועד סגירה; last call;
    goes off; goes off at; hammer; hammer falls; hammer at; gavel; gavel falls; gavel at; deadline; bid deadline;
    bidding deadline; bid cutoff; cutoff; cut-off; cut off; bids until; bids accepted until; bid by; bids in by;
    last bid by; last bids; final call; final bids; until; runs until; open till; over at; ends / closes; finish;
    finish time; shuts; shuts at; bidding shuts; timed end; sale over; sells at; wraps up; lot clock; hora de cierre;
    fecha de cierre; cierre de pujas; fin de pujas; finaliza; finaliza el; hasta; vence; fin de l'encan; fin de vente;
    date de fin; heure de fin; date de fermeture; heure de fermeture; ferme; ferme à; ferme le; fermeture;
    fermeture des mises; fin des mises; jusqu'au; jusqu'à; ende; ende der auktion; schluss; gebotsschluss; zuschlag um`,
  'time-left': `time left; time remaining; remaining time; remaining; time to close; time until close; countdown; left; closes in;
    closing in; ends in; ending in; auction ends in; auction closes in; bidding ends in; bidding closes in;
    lot closes in; lot ends in; sale ends in; sale closes in; tiempo restante; cierra en; termina en; temps restant;
    se termine dans; restzeit; verbleibend; endet in; الوقت المتبقي; זמן שנותר; time to go; to go; left to bid;
    closes after; falta; faltan; queda; quedan; temps qu'il reste; il reste; reste; noch`,
  priceNow: `current bid; current high bid; current highest bid; current price; current bid price; current bid amount; high bid;
    highest bid; high bid now; bid now; leading bid; top bid; standing bid; price now; present bid; latest bid;
    last bid; live bid; current offer; highest offer; bid stands at; bid now stands at; winning bid so far; now at;
    current; oferta actual; puja actual; precio actual; oferta más alta; enchère actuelle; mise actuelle;
    offre actuelle; prix actuel; plus haute enchère; aktuelles gebot; höchstgebot; aktueller preis; السعر الحالي;
    المزايدة الحالية; أعلى مزايدة; הצעה נוכחית; מחיר נוכחי; bid so far; high bid so far; highest so far; best bid;
    best bid so far; best offer; on the table; in the room; bid in hand; bid held; money on it; now bid; bid at present; bid to beat;
    price so far; standing at; stands at; going at; now; high; hi bid; hi-bid; leading at; leading offer; leader at;
    top offer; top bid now; last call; last call bid; called at; offer now; bid level; current level;
    current standing; current high; current hi bid; bid ($); bid (usd); current bid ($); current bid (usd);
    puja más alta; mejor puja; mejor oferta; oferta vigente; va en; precio al momento; meilleure mise;
    meilleure offre; mise en cours; enchère en cours; mise la plus haute; mise la plus élevée; dernière mise;
    dernière enchère; mise actuelle (usd); höchstes gebot; gebot jetzt`,
  price: `price; bid; asking price; list price; precio; prix; preis; السعر; מחיר`,
  nextBid: `next bid; next minimum bid; next bid amount; minimum next bid; next valid bid; min next bid; next required bid;
    asking bid; asking; ask; next ask; bid at least; you need to bid; siguiente oferta; próxima puja;
    prochaine enchère; enchère suivante; prochaine mise; nächstes gebot; المزايدة التالية; next; next call;
    next raise; next next acceptable bid; least next bid; lowest next bid; minimum to bid; minimum to lead;
    to lead; to take the lead; to stay in; to keep going; to be next; to beat it; to top it; you would bid; you can bid; bid needed;
    bid wanted; needed next; wanted; wanted next; now wanted; now asking; now asked; call for; calling for;
    required bid; required next; puja mínima siguiente; puja siguiente; siguiente puja; próxima oferta mínima;
    oferta mínima siguiente; prochaine mise minimale; mise suivante; mise minimale; prochaine offre; offre suivante;
    nächstes mindestgebot; nächstes gebot ab`,
  increment: `increment; bid increment; bidding increment; minimum increment; min increment; min. increment; bid increments; step;
    bid step; price step; bid steps; raise by; minimum raise; min raise; incremento; incremento mínimo; palier;
    palier d'enchère; schritt; gebotsschritt; erhöhungsschritt; الحد الأدنى للزيادة; מדרגת הצעה; jump; jumps; jump of;
    bids rise by; bids move by; bids go up by; rises by; goes up by; go up by; up by; steps of; in steps of;
    step size; bid jump; bid raise; raise; raise of; minimum step; min step; smallest raise; bump; advance;
    advance by; incremento de puja; incr; incr.; inc; puja en pasos de; pasos de; aumento; aumento mínimo;
    palier de mise; paliers de; pas; pas de; pas d'enchère; hausse minimale; mindestschritt; schrittweite`,
  buyNow: `buy now; buy-now; buy it now; buy now price; buy-now price; buy it now price; buyout; buyout price; instant purchase;
    instant purchase price; fixed price; take it now; purchase now; purchase now price; comprar ahora; cómprelo ya;
    cómpralo ya; compra inmediata; achat immédiat; sofortkauf; sofortpreis; اشتر الآن; קנה עכשיו; buy it; buy for;
    buy at; buy price; buy at once; buy outright; outright; outright price;
    take it home; take it today; take it now for; own it now; own it for; yours now; yours now for; yours for;
    skip the wait; skip the wait: buy at; no-wait price; immediate price; immediate purchase; straight sale price;
    straight purchase; instant price; instant buy; end it now; end it now for; close it now for; bin; bin price; bn;
    buy-it; comprar ya; compra ya; precio de compra inmediata; llévatelo por; llévelo por; achat direct;
    acheter maintenant; prix d'achat immédiat; prix ferme; direktkauf; festpreis; sofort-kaufen`,
  title: `title; title status; title brand; title brands; title type; title / brand; title state & type; title document;
    title info; title information; title history; ownership document; type of title; título; titre; fahrzeugbrief;
    paper; papers; paperwork; title doc; title paper; titling; ttl; ttl status; title state; title is;
    ownership paper; ownership papers; ownership; certificate; certificate of title; legal title; brand on title;
    branding; brands; título / papeles; papeles; documentos; estado del título; título de propiedad; certificat;
    certificat d'immatriculation; papiers; statut du titre; état du titre; fahrzeugpapiere; papiere; titel`,
  condition: `condition; condition notes; condition summary; condition report; condition details; condition comments;
    overall condition; announcements; announcement; damage; damage notes; damages; known damage; known issues;
    disclosures; seller disclosures; remarks; inspector notes; inspection notes; seller notes; condición; daños; état;
    état général; dommages; zustand; schäden; الحالة; מצב; wear; wear and tear; wear & tear; shape; state of it;
    general condition; general state; known faults; faults; flaws; damage noted; noted damage; primary damage;
    body and paint; body condition; cond; cond.; condition statement; condition note; inspection; inspection result;
    inspector says; inspector's notes; inspector’s notes; inspector's note; what we found; what we saw; issues;
    known problems; declared; declarations; announced; estado; estado general; condición general; detalles;
    desperfectos; condition générale; condition du véhicule; remarques; défauts; dommages connus; mängel; bemerkungen`,
  transmission: `transmission; transmission type; trans; gearbox; transmisión; boîte de vitesses; getriebe; ناقل الحركة; trans.; tran;
    trn; trns; tm; t/m; trans type; gears; shift; shifting; shifter; shifts; gear; gearing; box; caja;
    caja de cambios; caja de velocidades; cambio; transmisión / caja; boîte; boîte vit; transm; transmission / boîte;
    getriebeart; schaltung`,
  drive: `drive; drivetrain; drive train; drive type; driveline; driveline type; drive line; drive line type; wheel drive;
    driven wheels; tracción; traction; antrieb; نظام الدفع; drv; drvtrn; dr; axles driven; driven axles;
    powered wheels; wheels driven; wheels powered; drive wheels; driving wheels; pull; pulls with; power to;
    traction type; drive system; axle drive; rouage; roues motrices; entraînement; motricité; tracción motriz;
    ruedas motrices; rodada; antriebsart; antriebsräder`,
  'other-money': `starting bid; start bid; starting price; start price; opening bid; opening price; minimum bid; min bid; min. bid;
    reserve; reserve price; estimate; estimated value; estimated retail; estimated retail value; retail; retail value;
    retail price; msrp; new price; original price; was; list; book value; market value; wholesale; wholesale value;
    average price; trade value; buy fee; buyer fee; buyer's fee; buyers fee; fee; fees; sale fee; online fee;
    document fee; doc fee; title fee; gate fee; deposit; bid deposit; transport; transport quote; shipping;
    shipping estimate; delivery; your bid; your max; your max bid; my bid; my max bid; your maximum bid; max bid;
    maximum bid; proxy bid; your proxy; autobid; sold; sold for; sold price; final bid; final price; winning bid;
    hammer; hammer price; price sold; total; total due; total price; all-in; you save; savings; payment;
    monthly payment; est. payment; tax; taxes; repair cost; repair estimate; estimated repairs; cost of repairs;
    replacement value; cash value; actual cash value; loan value; balance; purchasing power; credit; available credit;
    spending limit; precio inicial; precio de reserva; mise à prix; prix de réserve; prix de départ; startpreis;
    startgebot; mindestpreis; السعر الابتدائي; opened; opened at; opening; opening bid was; start; starts at;
    started at; first bid; first bid must be; bid starts at; list price new; new list price; sticker; sticker price;
    sticker when new; new in; msrp when new; price when new; estimated buy fee; fee on this bid; est fee; gate charge;
    block fee; buyer premium; premium; prior hammer; prior bid; previous bid; last sale; last sold; last time;
    ran before at; your limit; your ceiling; my limit; my ceiling; purse left; cash left; line left; market guess;
    guess; worth; recon; recon estimate; repairs; storage; storage per day; tow; towing; haul; haul quote; freight;
    precio de salida; salida; precio de arranque; tarifa; cuota; cuota de compra; comisión; valor;
    valor estimado; mise de départ; prix de ouverture; frais d'acheteur; frais; valeur; valeur estimée;
    estimation; prix neuf; neuf; neupreis; aufgeld; gebühr; schätzwert`,
  'other-time': `starts; starts at; start; start time; start date; opens; opens at; opening time; begins; sale date; auction date;
    sale day; date of sale; sale starts; auction starts; auction start; auction opens; bidding opens; bidding starts;
    sale begins; inspection; inspection ends; inspection date; preview; preview ends; preview closes; viewing;
    pickup by; pick-up by; pick up by; removal deadline; removal by; payment due; payment due by; pay by; posted;
    listed; listed on; date listed; added; updated; last updated; last seen; registration closes; registration ends;
    offer expires; offer ends; offer valid until; expires; dispute window closes; arbitration ends; claim by;
    claims close; office closes; gate closes; gates close; manufactured; date of manufacture; build date; title date;
    report date; inspected on; inspected; delivery by; reopens; inicia; comienza; début; beginn; opened; opened on;
    opened at; bidding began; began; bidding opened; viewing times; viewing hours; open house; inspections; look-see;
    lots open; print time; printed; printed on; generated; page made; as of; data as of; refreshed; last change;
    checked in; arrived; received; in yard since; previous run; last run; ran on; next sale; apertura; abre; visita;
    visitas; recogida; retiro; pago; actualizado; publicado; impreso; visite; visites; inspection le; paiement;
    enlèvement; ramassage; mise à jour; publié; imprimé; besichtigung; abholung bis; zahlung; aktualisiert; gedruckt`,
  other: `engine; engine type; engine size; cylinders; fuel; fuel type; body; body style; body type; color; colour; exterior;
    exterior color; interior; interior color; ext color; int color; doors; seats; keys; key; grade; stock; stock #;
    stock no; stock number; unit #; unit number; unit; views; watchers; watching; bids; bid count; number of bids;
    bidders; status; state; type; class; category; horsepower; mpg; range; warranty; tires; brakes; options;
    equipment; features; description; details; photos; documents; history; notes; runs; starts and drives; loss;
    primary damage type; airbags; gvwr; axle; axles; wheelbase; cab; bed; hours; engine hours; weight; drivable;
    contact; phone; email; share; report; reference; ref; sale type; lane; seller type; channel; previous owners;
    owners; service records; emissions; registration; plate; license plate; payment terms; quantity; bodystyle;
    box length; bed length; engine no; motor; power; fuel / engine; displacement; axle ratio; gcwr; payload; towing;
    carrocería; motor / combustible; combustible; color exterior; llaves; puertas; carrosserie; moteur; carburant;
    couleur; clés; portes; karosserie; hubraum; kraftstoff; farbe; schlüssel; photo; pictures; pics; remarks count;
    reserve met; reserve status; autocheck; book; rating; score; bidder; high bidder; your status; your position;
    watch; bids placed; no of bids; # bids; buyers; sale format; format; terms; pujas; número de pujas; mises;
    nombre de mises; anzahl gebote; battery health; battery; range when full; range on a charge; seating; key count;
    tires front; tires rear; hour meter; pto hours`,
};

const BY_LABEL: ReadonlyMap<string, readonly Meaning[]> = (() => {
  const found = new Map<string, Meaning[]>();
  for (const meaning of Object.keys(WORDS) as Meaning[]) {
    for (const label of WORDS[meaning].split(';')) {
      const key = labelKey(label);
      const before = found.get(key);
      if (before === undefined) found.set(key, [meaning]);
      else if (!before.includes(meaning)) before.push(meaning);
    }
  }
  return found;
})();
const NONE: readonly Meaning[] = [];

/** The longest label there is, in characters and with room for decoration; anything longer is no label. */
export const LABEL_LENGTH = 60;

/** What `text` means if it is nothing but a label; undefined when it is none that we know. */
export const meaningOf = (text: string): Meaning | undefined => meaningsOf(text)[0];

/** Everything that a label can mean, by what stands beside it: the hammer falls at an hour, or fell at an amount. */
export function meaningsOf(text: string): readonly Meaning[] {
  if (text.length > LABEL_LENGTH) return NONE;
  return BY_LABEL.get(labelKey(text)) ?? BY_LABEL.get(labelKey(text.replace(/\([^()]{0,40}\)/g, ''))) ?? NONE;
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
