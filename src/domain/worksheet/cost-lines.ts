import { correctedRecon } from '../correction/corrected-recon.ts';
import { type Corrections, reconFactor } from '../correction/corrections.ts';
import type { CostLine } from '../deal/deal.ts';
import type { LotFacts } from '../lot/lot.ts';
import { type Cents, cents, LARGEST_CENTS, roundedCents, ZERO } from '../money/cents.ts';
import type { ReconLine } from '../money/estimate.ts';
import { formatMoney } from '../money/format-money.ts';
import { PPM } from '../money/rate.ts';
import { mulDivRound } from '../money/rounding.ts';
import type { StandingCosts } from '../setup/money-rules.ts';
import type { Setup } from '../setup/setup.ts';
import type { TransportRule } from '../setup/venue.ts';

/** The costs of a lot that do not depend on the hammer price, in the order in which the worksheet takes them off. */
export function costLines(
  facts: LotFacts,
  { costs: standing, corrections }: Pick<Setup, 'costs' | 'corrections'>,
  transport: TransportRule,
): readonly CostLine[] {
  return [
    ...reconLines(correctedRecon(facts, corrections).recon ?? [], standing, corrections),
    transportLine(facts.transport, transport),
    ...someLine('pack', 'Pack', standing.packCents),
    ...someLine('overhead', 'Overhead', standing.overheadCents),
    ...someLine('selling', 'Cost of selling', standing.sellingCents),
  ];
}

const STANDARD_RECON = 'Recon, your standard amount';

const someLine = (kind: CostLine['kind'], label: string, amount: Cents): readonly CostLine[] =>
  amount === 0 ? [] : [{ kind, label, cents: amount }];

function reconLines(
  lines: readonly ReconLine[],
  standing: StandingCosts,
  corrections: Corrections | undefined,
): readonly CostLine[] {
  if (lines.length === 0) {
    const times = reconFactor(corrections?.recon, STANDARD_RECON);
    return [{ kind: 'recon', label: STANDARD_RECON, cents: roundedCents(standing.reconCents * times) }];
  }
  return lines.map((line) => {
    const sure = line.chance === PPM;
    const { low, high } = line.amount;
    const named = /^recon/i.test(line.label) ? line.label : `Recon: ${line.label}`;
    return {
      kind: 'recon',
      label: sure ? named : `${named} (${percent(line.chance)} likely to be needed)`,
      cents: expectedRecon(line),
      // A job that may not be needed at all may cost nothing.
      ...((low ?? high) !== undefined && {
        range: { low: sure ? (low ?? line.amount.likely) : ZERO, high: high ?? line.amount.likely },
      }),
    };
  });
}

/**
 * What a recon line costs on average. Recon overruns far more often than it underruns, so with a low or a high end the
 * likely figure is read as the most likely and the average is `(low + 4 × likely + high) / 6`, the mean of a PERT
 * distribution; with neither it is the likely figure. Times the chance that it is needed; rounded half up, once.
 */
export function expectedRecon({ amount, chance }: ReconLine): Cents {
  const { low, likely, high } = amount;
  return cents(mulDivRound((low ?? likely) + 4 * likely + (high ?? likely), chance, 6 * PPM, 'half-up'));
}

/** What bringing it home costs: the lot's own quote, or what the venue's rule comes to. */
export function transportLine(quote: Cents | undefined, rule: TransportRule): CostLine {
  if (quote !== undefined) return { kind: 'transport', label: 'Transport, as quoted', cents: quote };
  if (rule.kind === 'flat') return { kind: 'transport', label: 'Transport, the venue’s flat rate', cents: rule.cents };
  const byMile = cents(Math.min(LARGEST_CENTS, rule.miles * rule.centsPerMile));
  const asMiles = `${rule.miles.toLocaleString('en-US')} miles at ${formatMoney(rule.centsPerMile)}`;
  return byMile >= rule.minimumCents
    ? { kind: 'transport', label: `Transport, ${asMiles}`, cents: byMile }
    : { kind: 'transport', label: 'Transport, minimum charge', cents: rule.minimumCents };
}

const percent = (chance: number) => `${Number(((chance / PPM) * 100).toFixed(1))}%`;
