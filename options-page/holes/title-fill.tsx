import { PPM, type Ppm } from '../../src/domain/money/rate.ts';
import { withTitleFigure } from '../../src/domain/setup/fill-hole.ts';
import type { TitleBrand } from '../../src/domain/setup/money-rules.ts';
import { RateInput } from '../../src/ui/inputs/rate-input.tsx';
import type { FillProps } from './fill.ts';

/** Asks what cars with a title bring, where only the starting figure is known. */
export function TitleFill({ title, setup, onFill }: FillProps & { readonly title: TitleBrand }) {
  const starting = `${(title.keepsPpm / PPM) * 100}%`;
  const save = (keeps: Ppm) => onFill(withTitleFigure(setup, title.id, keeps), `Title ${title.name} saved.`);
  return (
    <div class="stack">
      <RateInput
        label={`What a ${title.name} car brings, as % of clean retail`}
        value={undefined}
        hint="Go by what such cars brought you. Lenders, insurers and buyers all take something off."
        onCommit={(keeps) => keeps !== undefined && save(keeps)}
      />
      <p>
        <button type="button" class="plain" onClick={() => save(title.keepsPpm)}>
          {starting} is right
        </button>
      </p>
    </div>
  );
}
