/** Base64 (RFC 4648, section 4) of bytes, without the system. */

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

export function base64(bytes: Uint8Array): string {
  const parts: string[] = [];
  let text = '';
  for (let at = 0; at < bytes.length; at += 3) {
    const [one, two, three] = [bytes[at]!, bytes[at + 1], bytes[at + 2]];
    const group = (one << 16) | ((two ?? 0) << 8) | (three ?? 0);
    text += LETTERS[group >>> 18]! + LETTERS[(group >>> 12) & 63]!;
    text += two === undefined ? '==' : LETTERS[(group >>> 6) & 63]!;
    if (two !== undefined) text += three === undefined ? '=' : LETTERS[group & 63]!;
    if (text.length > 8192) {
      parts.push(text);
      text = '';
    }
  }
  return parts.join('') + text;
}
