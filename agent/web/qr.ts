/** A text as a QR code (ISO/IEC 18004), drawn as one SVG path, with the four quiet modules round it. */
import encodeQR from 'qr';

export interface QrDrawing {
  /** Modules a side, quiet ones included. */
  readonly size: number;
  readonly path: string;
}

export function qrOf(text: string): QrDrawing {
  const rows = encodeQR(text, 'raw', { ecc: 'medium', border: 4 });
  const dark = rows.flatMap((row, y) =>
    row.flatMap((isDark, x) => (isDark ? [`M${x} ${y}h1v1h-1z`] : [])),
  );
  return { size: rows.length, path: dark.join('') };
}
