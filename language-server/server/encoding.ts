/**
 * Columns as an editor counts them. Inside, a column counts UTF-16 units; an editor may ask for UTF-8 bytes instead
 * (Language Server Protocol 3.17, `general.positionEncodings`).
 */
import { type ClientCapabilities, PositionEncodingKind } from 'vscode-languageserver/node';

export type Encoding = typeof PositionEncodingKind.UTF16 | typeof PositionEncodingKind.UTF8;

/** UTF-16 is what every editor must know; UTF-8 only where the editor wants it most. */
export function encodingFor({ general }: ClientCapabilities): Encoding {
  const [first] = general?.positionEncodings ?? [];
  return first === PositionEncodingKind.UTF8 ? PositionEncodingKind.UTF8 : PositionEncodingKind.UTF16;
}

/** From a column inside to one of the editor's. */
export function columnOut(line: string, column: number, encoding: Encoding): number {
  if (encoding === PositionEncodingKind.UTF16) return column;
  let bytes = 0;
  for (let at = 0; at < Math.min(column, line.length); ) {
    const point = line.codePointAt(at)!;
    bytes += bytesOf(point);
    at += point > 0xffff ? 2 : 1;
  }
  return bytes;
}

/** From a column of the editor's to one inside; one within a character means its beginning. */
export function columnIn(line: string, column: number, encoding: Encoding): number {
  if (encoding === PositionEncodingKind.UTF16) return column;
  let bytes = 0;
  let at = 0;
  while (at < line.length) {
    const point = line.codePointAt(at)!;
    bytes += bytesOf(point);
    if (bytes > column) return at;
    at += point > 0xffff ? 2 : 1;
  }
  return at;
}

function bytesOf(point: number): number {
  return point < 0x80 ? 1 : point < 0x800 ? 2 : point < 0x10000 ? 3 : 4;
}
