import { MINUTE } from '../../../src/domain/time/units.ts';
import { MIDNIGHT, type Saturday, type Shown } from './saturday.ts';

/** What somebody does about each notice, and what he does by himself that day. */
interface Behavior {
  readonly onNotice?: (shown: Shown, saturday: Saturday) => void;
  readonly begin?: (saturday: Saturday) => void;
}

const at = (time: string): number => Date.parse(`2026-12-05T${time}:00Z`);
const isQuestion = ({ notice }: Shown): boolean => /how did/i.test(notice.title);

/** He does what it asks, so many minutes after it was shown, and for each bid he needs as many again. */
function actsAfter(minutes: number, each = 0, unless: (shown: Shown, saturday: Saturday) => boolean = () => false) {
  return (shown: Shown, saturday: Saturday): void => {
    if (isQuestion(shown) || unless(shown, saturday)) return;
    let [when, turn] = [shown.at + minutes * MINUTE, 0];
    for (const lot of shown.names) {
      turn += 1;
      when = shown.at + minutes * MINUTE + turn * each * MINUTE;
      saturday.at(when, async () => {
        if (await saturday.wants(lot)) await saturday.place(lot);
      });
    }
  };
}

const atOnce = actsAfter(1);
const between = (from: string, until: string) => (shown: Shown) => shown.at >= at(from) && shown.at < at(until);

/** By the id of the script. */
export const BEHAVIORS: Readonly<Record<string, Behavior>> = {
  s01: { onNotice: atOnce },
  s02: {},
  s03: {
    onNotice: actsAfter(20, 0, (shown, saturday) => !saturday.browser.notices.has(shown.notice.id)),
  },
  s04: { onNotice: putsOffOnce() },
  s05: { onNotice: actsAfter(1, 0, between('19:30', '21:30')) },
  s06: {
    onNotice: atOnce,
    begin(saturday) {
      saturday.at(at('19:45'), async () => {
        saturday.closedUntil = at('20:50');
      });
    },
  },
  s08: { onNotice: actsAfter(3, 0, ({ notice }) => notice.loudness === 'quiet') },
  s09: {
    onNotice: atOnce,
    begin(saturday) {
      for (const { lot, close } of saturday.lots)
        if (Date.parse(close) > at('19:00'))
          saturday.at(at('19:00'), async () => {
            await saturday.act(lot, { do: 'hand-over', to: 'the salesperson' });
          });
    },
  },
  s10: {
    onNotice: actsAfterBut(['109', '110'], at('19:58')),
    begin(saturday) {
      saturday.at(at('19:46'), async () => {
        await saturday.act('109', { do: 'ended', result: { ended: 'lost' }, early: true, sure: ['early'] });
      });
      saturday.at(at('19:49'), () => saturday.undo('109'));
      saturday.at(at('19:50'), () => saturday.place('110'));
      saturday.at(at('19:58'), () => saturday.undo('110'));
    },
  },
  s11: {},
  s12: {
    onNotice: actsAfterBut(['303'], at('18:33'), actsAfter(0, 4)),
    begin(saturday) {
      saturday.at(at('18:32'), async () => {
        await saturday.act('303', { do: 'put-off', minutes: 30 });
      });
    },
  },
};

/** He leaves some lots alone until a time. */
function actsAfterBut(lots: readonly string[], until: number, does = atOnce) {
  return (shown: Shown, saturday: Saturday): void => {
    const names = shown.names.filter((lot) => shown.at >= until || !lots.includes(lot));
    does({ ...shown, names }, saturday);
  };
}

/** The first notice that names a lot is put off by a quarter of an hour, the second is acted on. */
function putsOffOnce() {
  const put = new Set<string>();
  return (shown: Shown, saturday: Saturday): void => {
    // The lists of the evening before and of the busy hours can't be put off.
    if (shown.at < MIDNIGHT || shown.notice.id.startsWith('rush')) return;
    const fresh = shown.wanting.filter((lot) => !put.has(lot));
    for (const lot of fresh) {
      put.add(lot);
      saturday.at(shown.at + MINUTE, async () => {
        await saturday.act(lot, { do: 'put-off', minutes: 15 });
      });
    }
    const again = shown.wanting.filter((lot) => !fresh.includes(lot));
    atOnce({ ...shown, names: again }, saturday);
  };
}
