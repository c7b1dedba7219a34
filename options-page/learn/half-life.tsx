import { HALF_LIFE_DAYS } from '../../src/domain/learn/corrections/forgetting.ts';
import { NumberInput } from '../../src/ui/inputs/number-input.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';

/** After how many days a case counts for half; scores and corrections go by the same figure. */
export function HalfLife() {
  const { setup, saveSetup, say } = useWorkspace();
  const save = async (halfLifeDays: number | undefined) => {
    const saved = await saveSetup({
      corrections: { ...setup.corrections, halfLifeDays: halfLifeDays ?? HALF_LIFE_DAYS },
    });
    if (saved.ok) say(`A case counts for half after ${halfLifeDays ?? HALF_LIFE_DAYS} days.`, saved.value.entry);
    else say(saved.message);
  };
  return (
    <div class="half-life no-print">
      <NumberInput
        label="A case counts for half after"
        value={setup.corrections?.halfLifeDays ?? HALF_LIFE_DAYS}
        least={30}
        most={3650}
        unit="days"
        onCommit={save}
      />
    </div>
  );
}
