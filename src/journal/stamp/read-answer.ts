import { ContentInfo } from '@peculiar/asn1-cms';
import { AsnConvert } from '@peculiar/asn1-schema';
import { PKIStatus, TimeStampResp } from '@peculiar/asn1-tsp';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';

/** The token out of an authority's answer (RFC 3161, section 2.4.2), or out of a file that is the token alone. */
export function tokenOfAnswer(bytes: Uint8Array<ArrayBuffer>): Outcome<Uint8Array<ArrayBuffer>> {
  try {
    AsnConvert.parse(bytes, ContentInfo);
    return ok(bytes);
  } catch {
    // Not the token alone, so it is an answer, or nothing of the kind.
    return tokenOfResponse(bytes);
  }
}

function tokenOfResponse(bytes: Uint8Array<ArrayBuffer>): Outcome<Uint8Array<ArrayBuffer>> {
  let answer: TimeStampResp;
  try {
    answer = AsnConvert.parse(bytes, TimeStampResp);
  } catch {
    return refuse('not-an-answer', 'This file is not the answer of a time-stamp authority (a .tsr file, RFC 3161).');
  }
  const { status, statusString } = answer.status;
  const granted = status === PKIStatus.granted || status === PKIStatus.grantedWithMods;
  if (granted && answer.timeStampToken !== undefined)
    return ok(new Uint8Array(AsnConvert.serialize(answer.timeStampToken)));
  const words = statusString?.length ? ` It says: ${[...statusString].join(' ')}` : '';
  return refuse('refused-there', `The authority did not give a stamp.${words}`);
}
