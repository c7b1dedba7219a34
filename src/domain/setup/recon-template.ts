import * as z from 'zod/mini';
import { type ReconLine, reconLineSchema } from '../money/estimate.ts';
import { plainWords } from '../text/plain-words.ts';

const shortName = z.string().check(z.minLength(1), z.maxLength(80));

/** What a class of car usually needs before it can be sold: recon lines under a name. */
export const reconTemplateSchema = z.strictObject({
  id: z.string().check(z.minLength(1), z.maxLength(60)),
  name: shortName,
  carClass: z.optional(z.string().check(z.maxLength(80), z.describe('the class of car it is for, such as cargo van'))),
  models: z.optional(
    z
      .array(shortName)
      .check(z.maxLength(60), z.describe('models of that class; it is offered first for a car whose name has one')),
  ),
  lines: z.array(reconLineSchema).check(z.maxLength(60)),
});
export type ReconTemplate = z.infer<typeof reconTemplateSchema>;

/** The words of a car's name that a model can stand in. */
interface NamedCar {
  readonly make?: string | undefined;
  readonly model?: string | undefined;
  readonly trim?: string | undefined;
}

/** Whether a template is for a car: one of its models stands in the car's name, whole words only. */
export function fitsCar({ models = [] }: Pick<ReconTemplate, 'models'>, { make, model, trim }: NamedCar): boolean {
  const name = ` ${plainWords([make, model, trim].filter(Boolean).join(' '))} `;
  return models.some((one) => plainWords(one) !== '' && name.includes(` ${plainWords(one)} `));
}

/** Those with lines, the ones for all of the cars first; otherwise in the order of the setup. */
export function templatesFor(
  templates: readonly ReconTemplate[],
  cars: readonly NamedCar[],
): readonly { readonly template: ReconTemplate; readonly fits: boolean }[] {
  const offered = templates
    .filter(({ lines }) => lines.length > 0)
    .map((template) => ({ template, fits: cars.length > 0 && cars.every((car) => fitsCar(template, car)) }));
  return [...offered.filter(({ fits }) => fits), ...offered.filter(({ fits }) => !fits)];
}

/** What a template makes of the lines that a lot has. */
export interface Templated {
  readonly lines: ReconLine[];
  /** Labels of the lines that are new. */
  readonly added: readonly string[];
  /** Labels that the lot had already with other figures: those figures stay. */
  readonly left: readonly string[];
}

/** The lot's own lines as they are, and behind them the template's that it lacks. Nothing that was entered is changed. */
export function withTemplate(own: readonly ReconLine[], { lines }: Pick<ReconTemplate, 'lines'>): Templated {
  const has = new Map(own.map((line) => [plainWords(line.label) || line.label, line]));
  const added: ReconLine[] = [];
  const left: string[] = [];
  for (const line of lines) {
    const before = has.get(plainWords(line.label) || line.label);
    if (before === undefined) added.push(line);
    else if (!sameFigures(before, line)) left.push(before.label);
  }
  return { lines: [...own, ...added], added: added.map(({ label }) => label), left };
}

const sameFigures = (a: ReconLine, b: ReconLine) =>
  a.chance === b.chance &&
  a.amount.low === b.amount.low &&
  a.amount.likely === b.amount.likely &&
  a.amount.high === b.amount.high;
