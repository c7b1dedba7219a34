import { AsnConvert, OctetString } from '@peculiar/asn1-schema';
import { MessageImprint, TimeStampReq, TimeStampReqVersion } from '@peculiar/asn1-tsp';
import { AlgorithmIdentifier } from '@peculiar/asn1-x509';
import type { ChainHead } from '../chain-head.ts';
import { imprintOf, SHA_256 } from './stamp-format.ts';

/**
 * A request for a time stamp of a head (RFC 3161, section 2.4.1), as a file for the user to send. It asks for the authority's
 * certificate, and has no nonce: the same head is never asked for twice with another meaning, and an earlier answer would only
 * prove more.
 */
export async function stampRequest(head: ChainHead): Promise<Uint8Array<ArrayBuffer>> {
  const hashAlgorithm = new AlgorithmIdentifier({ algorithm: SHA_256, parameters: null });
  const hashedMessage = new OctetString(await imprintOf(head));
  const request = new TimeStampReq({
    version: TimeStampReqVersion.v1,
    messageImprint: new MessageImprint({ hashAlgorithm, hashedMessage }),
    certReq: true,
  });
  return new Uint8Array(AsnConvert.serialize(request));
}
