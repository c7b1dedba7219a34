import { Algorithms, encodeAccount, encodeOperator } from '@nats-io/jwt';
import { keyOfSeed } from '../keys/user-key.ts';
import type { ServerKeys } from './server-keys.ts';

type Signing = Pick<ServerKeys, 'operator' | 'account' | 'system'>;

/** No limits of its own: the machine's disk is the limit, and a full one is said. */
const NO_LIMITS = { conn: -1, subs: -1, data: -1, payload: -1, imports: -1, exports: -1, wildcards: true, leaf: -1 };
const STORAGE = { mem_storage: 0, disk_storage: -1, streams: -1, consumer: -1 };

/** What the server's file holds of who may sign: it never has to be touched again. */
export interface OperatorWords {
  readonly operator: string;
  readonly system: { readonly key: string; readonly word: string };
  readonly account: { readonly key: string; readonly word: string };
}

export async function operatorWords(keys: Signing): Promise<OperatorWords> {
  const [operator, system] = [keyOfSeed(keys.operator), keyOfSeed(keys.system)];
  const systemKey = system.getPublicKey();
  return {
    operator: await encodeOperator('headroom', operator, { system_account: systemKey }),
    system: {
      key: systemKey,
      word: await encodeAccount(
        'system',
        system,
        { limits: NO_LIMITS },
        { signer: operator, algorithm: Algorithms.v2 },
      ),
    },
    account: { key: keyOfSeed(keys.account).getPublicKey(), word: await accountWord(keys, []) },
  };
}

/** The operator's word for the team's account, with the keys that hold no more. They stay in it for good. */
export function accountWord(keys: Signing, putOut: readonly string[]): Promise<string> {
  // A key that was put out is never let in again: who comes back has a new one.
  const forGood = 4_102_444_800;
  return encodeAccount(
    'team',
    keyOfSeed(keys.account),
    {
      limits: { ...NO_LIMITS, ...STORAGE },
      ...(putOut.length > 0 && { revocations: Object.fromEntries(putOut.map((key) => [key, forGood])) }),
    },
    { signer: keyOfSeed(keys.operator), algorithm: Algorithms.v2 },
  );
}
