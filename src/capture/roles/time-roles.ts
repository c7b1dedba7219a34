import type { RoleRule } from './role-words.ts';

/** What a moment on a lot's page can be. */
export type TimeRole = 'close' | 'left' | 'other';

const rule = (role: TimeRole, weight: number, words: RegExp): RoleRule<TimeRole> => ({ role, weight, words });

/** The words of a label, a column's head, or those before a moment in a line. */
export const TIME_LABELS: readonly RoleRule<TimeRole>[] = [
  rule(
    'other',
    1,
    /\b(?:open(?:s|ed|ing)?|start(?:s|ed|ing)?|begin(?:s|ning)?|began|preview\w*|inspect\w*|view(?:ing|s)?|look(?:s|ing)?|show(?:ing|n)?|drive[- ]?bys?|pick[- ]?ups?|picked up|remov(?:e|al|ed)|load(?:ing|out)?|storage|pay(?:ment)?s?|paid|due date|invoice\w*|dispute\w*|arbitration|claims?|office|gates?|desk|hours|returns?|deliver\w*|ship\w*)\b/,
  ),
  rule(
    'other',
    1,
    /\b(?:print(?:ed)?|posted|listed|added|updated?|drawn|refreshed|made|written|published|sent|as of|since|report(?:ed)?|inspected on|photographed|received|arrived|in service|built|build|manufactured|issued|given|registered|expires?|registration|offer valid|placed|placed at|bid at|was|before|formerly|prior|previous(?:ly)?|last (?:bid|seen|login|updated|run|sale)|lane (?:start|open)s?|warranty|service|meeting|board meets|meets|next sale|other sale)\b/,
  ),
  rule(
    'other',
    0.9,
    /\b(?:sale (?:date|day|starts?|begins?)|auction (?:date|day|starts?)|date of sale|début|commence|ouverture|inicia|comienza|apertura|beginn?t?|startet|visite|besichtigung)\b/,
  ),
  rule(
    'close',
    0.97,
    /\b(?:clos(?:e|es|ed|ing)|end(?:s|ed|ing|e)?|shut(?:s|ting)?|finish(?:es|ed|ing)?|stops?|terminat\w*|conclud\w*|hammer(?: falls| drops)?|gavel(?: falls| drops)?|last call|final call|cut[- ]?off|deadline|expires at|until|till|thru|through)\b/,
  ),
  rule(
    'close',
    0.97,
    /\b(?:bids?|offers?|tenders?) (?:are |is |must be )?(?:due|in by|by|in)\b|\bdue (?:by|in|at)?$|\b(?:new|scheduled|current|extended) end\b|\bgoes(?: off)?$|\bout at$|\bover (?:at|on)\b|\bdone at\b|\bfalls(?: at)?$|\bnew close\b/,
  ),
  rule(
    'close',
    0.95,
    /\b(?:cierr[ae]|cierre|termina|finaliza|fin\b|clôture|ferm(?:e|eture)|se termine|prend fin|endet|ende\b|gebotsende|auktionsende|schluss)\b/,
  ),
  rule(
    'left',
    0.97,
    /\b(?:time )?(?:left|remaining|to go|remains|restant\w*|restante|restzeit|verbleibend)\b|\b(?:closes|ends|closing|ending|shuts) in$|\bcountdown\b|\bclock\b|\bt-$/,
  ),
];

/** Words that stand behind a moment: "2:05 PM close". */
export const TIME_AFTER: readonly RoleRule<TimeRole>[] = [
  rule('close', 0.9, /^(?:is the (?:close|end)|clos(?:e|es|ing)\b|ends?\b|ending|cut-?off|deadline|hammer|gavel)/),
  rule(
    'other',
    0.95,
    /^(?:opens?\b|starts?\b|start time|preview|inspection|pick-?up|removal|to \d|[–-] ?\d|sharp start)/,
  ),
];
