import type { ReviewGroup } from '../../../src/domain/books/review/review-groups.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';

interface PictureProps {
  readonly groups: readonly ReviewGroup[];
  readonly nameOf: (key: string) => string;
}

/** Expected gross beside what came of it, for cars that have sold. A loss runs to the left of the line. */
export function GrossPicture({ groups, nameOf }: PictureProps) {
  const sold = groups.flatMap(({ key, expectedGross, actualGross }) =>
    expectedGross === null || actualGross === null ? [] : [{ key, expectedGross, actualGross }],
  );
  if (sold.length === 0) return null;
  const all = sold.flatMap(({ expectedGross, actualGross }) => [expectedGross, actualGross]);
  const low = Math.min(0, ...all);
  const span = Math.max(1, Math.max(0, ...all) - low);
  const place = (amount: Cents) => ({
    left: `${((Math.min(0, amount) - low) / span) * 100}%`,
    width: `${(Math.abs(amount) / span) * 100}%`,
  });
  return (
    <figure class="bars">
      <figcaption class="small strong">Gross on cars sold (solid) and expected gross (outline)</figcaption>
      <ul class="plain-list">
        {sold.map(({ key, expectedGross, actualGross }) => (
          <li key={key}>
            <span class="bar-name small">{nameOf(key)}</span>
            <span class="bar-track pair" aria-hidden="true">
              <span class="bar placed outline" style={place(expectedGross)} />
              <span class="bar placed lower solid" style={place(actualGross)} />
            </span>
            <span class="small number">{inWords(expectedGross, actualGross)}</span>
          </li>
        ))}
      </ul>
    </figure>
  );
}

function inWords(expected: Cents, actual: Cents): string {
  const size = formatMoney(cents(Math.abs(actual)), { cents: 'never' });
  return `${actual < 0 ? `a loss of ${size}` : size} of ${formatMoney(expected, { cents: 'never' })}`;
}
