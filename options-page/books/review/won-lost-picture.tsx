import type { ReviewGroup } from '../../../src/domain/books/review/review-groups.ts';

interface PictureProps {
  readonly groups: readonly ReviewGroup[];
  readonly nameOf: (key: string) => string;
}

/** Won and lost, one bar a group: what was won is solid, what was lost is an outline. The table below has the numbers. */
export function WonLostPicture({ groups, nameOf }: PictureProps) {
  const most = Math.max(1, ...groups.map(({ won, lost }) => won + lost));
  return (
    <figure class="bars">
      <figcaption class="small strong">Won (solid) and lost (outline)</figcaption>
      <ul class="plain-list">
        {groups.map(({ key, won, lost }) => (
          <li key={key}>
            <span class="bar-name small">{nameOf(key)}</span>
            <span class="bar-track" aria-hidden="true">
              <span class="bar solid" style={{ width: `${(won / most) * 100}%` }} />
              <span class="bar outline" style={{ width: `${(lost / most) * 100}%` }} />
            </span>
            <span class="small number">
              {won} won, {lost} lost
            </span>
          </li>
        ))}
      </ul>
    </figure>
  );
}
