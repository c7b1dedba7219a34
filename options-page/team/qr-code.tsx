import { useMemo } from 'preact/hooks';
import { encode } from 'uqr';

/** Light modules around it, as its standard asks for (ISO/IEC 18004). */
const BORDER = 4;

/** A text as a QR code, dark on light in either look, for another device's camera. */
export function QrCode({ text, label }: { readonly text: string; readonly label: string }) {
  const { size, path } = useMemo(() => drawn(text), [text]);
  return (
    <svg class="qr-code" viewBox={`0 0 ${size} ${size}`} role="img" aria-label={label} shape-rendering="crispEdges">
      <rect width={size} height={size} fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  );
}

function drawn(text: string): { readonly size: number; readonly path: string } {
  const { data, size } = encode(text, { border: BORDER, ecc: 'L' });
  const path = data.flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : []))).join('');
  return { size, path };
}
