import { bytesToHex } from '@noble/hashes/utils.js';
import type { SignedData, SignerInfo } from '@peculiar/asn1-cms';
import { AsnConvert } from '@peculiar/asn1-schema';
import {
  type Certificate,
  ExtendedKeyUsage,
  id_ce_extKeyUsage,
  id_ce_subjectKeyIdentifier,
  id_kp_timeStamping,
  type Name,
  SubjectKeyIdentifier,
} from '@peculiar/asn1-x509';

/** The certificate of the one who signed, out of those that came with the token; null when it is not among them. */
export function signerOf({ certificates }: SignedData, { sid }: SignerInfo): Certificate | null {
  const all = [...(certificates ?? [])].flatMap(({ certificate }) => certificate ?? []);
  const found = all.find(({ tbsCertificate }) => {
    const by = sid.issuerAndSerialNumber;
    if (by !== undefined)
      return (
        hexOf(by.serialNumber) === hexOf(tbsCertificate.serialNumber) && der(by.issuer) === der(tbsCertificate.issuer)
      );
    const own = tbsCertificate.extensions?.find(({ extnID }) => extnID === id_ce_subjectKeyIdentifier);
    if (own === undefined || sid.subjectKeyIdentifier === undefined) return false;
    return (
      hexOf(AsnConvert.parse(own.extnValue.buffer, SubjectKeyIdentifier).buffer) ===
      hexOf(sid.subjectKeyIdentifier.buffer)
    );
  });
  return found ?? null;
}

/** Whether a certificate is for time stamps and nothing else, and held at the time (RFC 3161, section 2.3); null when so. */
export function certificateFault({ tbsCertificate }: Certificate, at: Date): string | null {
  const usage = tbsCertificate.extensions?.find(({ extnID }) => extnID === id_ce_extKeyUsage);
  const purposes = usage === undefined ? [] : [...AsnConvert.parse(usage.extnValue.buffer, ExtendedKeyUsage)];
  if (usage?.critical !== true || purposes.length !== 1 || purposes[0] !== id_kp_timeStamping)
    return 'it is signed with a certificate that is not for time stamps';
  const { notBefore, notAfter } = tbsCertificate.validity;
  return notBefore.getTime() <= at && at <= notAfter.getTime() ? null : 'its certificate did not hold at its time';
}

/** A name as a person reads it: its common name and organization, whatever else it has. */
export function nameOf(name: Name): string {
  const parts = [...name].flatMap((part) => [...part]);
  const of = (type: string) => parts.find((part) => part.type === type)?.value.toString();
  const words = [of(COMMON_NAME), of(ORGANIZATION)].filter((word) => word !== undefined && word !== '');
  return [...new Set(words)].join(', ') || 'nobody named';
}

const COMMON_NAME = '2.5.4.3';
const ORGANIZATION = '2.5.4.10';

const der = (value: unknown): string => hexOf(AsnConvert.serialize(value));
const hexOf = (buffer: ArrayBuffer): string => bytesToHex(new Uint8Array(buffer));
