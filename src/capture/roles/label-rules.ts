import type { RoleRule } from './role-words.ts';

/** What else a label can name, besides amounts and moments. `other` matters because it is none of what is looked for. */
export type FactRole =
  | 'vin'
  | 'year'
  | 'make'
  | 'model'
  | 'trim'
  | 'miles'
  | 'kilometers'
  | 'lotNumber'
  | 'runNumber'
  | 'venueName'
  | 'sale'
  | 'seller'
  | 'location'
  | 'title'
  | 'condition'
  | 'transmission'
  | 'drive'
  | 'other';

const rule = (role: FactRole, weight: number, words: RegExp): RoleRule<FactRole> => ({ role, weight, words });

/** Labels by their words, for those that the list of whole labels does not hold. */
export const FACT_LABELS: readonly RoleRule<FactRole>[] = [
  rule(
    'other',
    0.95,
    /\b(?:engine|motor|cyl\w*|fuel|gas|diesel|body|cab\b|bed\b|colou?r|paint|exterior|interior|doors?|seats?|keys?|grade|stock|stk|views?|watch\w*|bids|bidders?|status|state of|type|class|category|horsepower|mpg|warranty|tires?|brakes?|options?|equip\w*|features?|photos?|pictures?|documents?|history|runs?\b|airbags?|gvwr?|axles?|wheelbase|weight|hours?|contact|phone|email|fax|share|emissions|plates?|registration|quantity|gate|desk|license|owners?|recalls?|statement|fee|printed|page|cluster|towing|payload|box length|length|height|roof)\b/,
  ),
  rule(
    'vin',
    1,
    /\bv\.?i\.?n\b|\b(?:serial|frame|chassis)(?: (?:no|number|#|stamp))?\b|\bvehicle (?:id\w*|number|no)\b|\bniv\b|\bfahrgestell|\bfgst|\bn[uú]mero de serie|\bnuméro de série|\bident(?:ification)? n/,
  ),
  rule(
    'miles',
    1,
    /\b(?:odo(?:meter)?|mileage|miles?|odómetro|odometro|compteur|millage|millaje|recorrido|tacho\w*|laufleistung|kilometerstand)\b/,
  ),
  rule(
    'miles',
    0.8,
    /\b(?:tracking|clock|on the clock|meter|distance|reading|tachometer|driven so far|traveled|been driven|usage)\b/,
  ),
  rule('kilometers', 1, /\b(?:kms?|kilomet\w+|kilom[eé]tr\w+|kilometraje)\b/),
  rule('year', 1, /\b(?:model year|year|yr|my|année|ano|año|baujahr|modelljahr)\b/),
  rule('make', 1, /\b(?:make|maker|manufacturer|mfr|mfg|marque|marca|hersteller|marke|built by)\b/),
  rule('model', 1, /\b(?:model|modèle|modelo|modell|mdl)\b(?! year)/),
  rule('trim', 1, /\b(?:trim|series|version|versión|finition|ausstattung|trim level|submodel|style)\b/),
  rule('lotNumber', 0.86, /^(?:no\.?|n°|num\.?|#)$/),
  rule(
    'lotNumber',
    0.95,
    /^(?:lot|item|lote|los)\b(?! (?:clos|end|stat|is|at|type))(?: ?(?:#|no\.?|number|num|id|n°|nr\.?))?\b/,
  ),
  rule(
    'runNumber',
    1,
    /\b(?:ln|lane|run)(?:[ /&-]{1,3}(?:and )?(?:run|no|number|slot|order|seq\w*))\b|^run(?: ?(?:#|no\.?|number))?$|\brun order\b|\bslot\b/,
  ),
  rule(
    'title',
    0.95,
    /\b(?:titles?|título|titre|papers?|paperwork|certificate|brand(?:s|ed)?|branding|pink slip|ownership|fahrzeugbrief)\b/,
  ),
  rule(
    'condition',
    0.9,
    /\b(?:cond(?:ition)?s?|damages?|announce\w*|remarks?|disclos\w*|defects?|known issues?|état|condición|zustand|schäden|daños|(?:what )?the seller says|notes?|comments?|declared)\b/,
  ),
  rule('transmission', 1, /\b(?:trans\w{0,8}|gear ?box|gears|getriebe|boîte(?: de vitesses)?|caja|shifter|shifts?)\b/),
  rule('transmission', 0.6, /^box$/),
  rule(
    'drive',
    1,
    /\b(?:drive(?:train|line|n)?|driven wheels|wheels driven|wheel drive|driven|tracción|traction|antrieb|drv|pulls with|power to|roues motrices|entraînement)\b/,
  ),
  rule(
    'seller',
    1,
    /\b(?:seller(?! ?(?:says|notes?|comments?|disclos\w*|remarks|present|type|statement))|consign(?:or|ed by|er)|sold by|offered by|from the fleet of|vendor|vendedor|vendeur|verkäufer|owner|put in by|out of|selling dealer)\b/,
  ),
  rule(
    'location',
    1,
    /\b(?:locat\w+|located|sits(?: in| at)?|parked(?: at| in)?|stands in|kept at|stored(?: at| in)?|yard|warehouse|where|city(?! of)|ubicación|lugar|lieu|emplacement|standort|site|pick ?up (?:at|from|location)|found at|is at|is in|facility|whereabouts)\b/,
  ),
  rule('location', 0.7, /^(?:at|in|place|town|city & state)$/),
  rule(
    'sale',
    0.9,
    /^(?:sale|auction|event|sale name|auction name|sale event|subasta|vente|encan|auktion|block|run list)$/,
  ),
  rule('venueName', 0.9, /^(?:venue|auction house|auction company|house|selling venue|site name|run by|auctioneer)$/),
];
