/**
 * What marks a finding as the same one after the file has changed elsewhere: its check, its file, the words it marks
 * and the line they stand on, and which of several equal ones it is. Moved lines, other layout and other wording of
 * the message leave it as it is; changed words at the place make it another finding. Not a secret, and not for keeping
 * apart what somebody made alike on purpose.
 */
import type { Finding } from './finding.ts';
import type { Lines } from './positions.ts';

/** The fingerprints of findings, in their order: 16 hexadecimal digits each, no two the same. */
export function fingerprintsOf(
  findings: readonly Finding[],
  lines: (file: string) => Lines | undefined,
): string[] {
  const seen = new Map<string, number>();
  return findings.map((finding) => {
    const words = [finding.file, finding.check, ...place(finding, lines(finding.file))].join('\u0000');
    const count = (seen.get(words) ?? 0) + 1;
    seen.set(words, count);
    return digits(`${words}\u0000${count}`);
  });
}

/** The first line of the place, and the marked words in it, without layout. */
function place({ start, end }: Finding, lines: Lines | undefined): string[] {
  if (lines === undefined) return [];
  const from = lines.at(start);
  const text = lines.text(from.line);
  const to = lines.at(end);
  const marked = text.slice(from.column, to.line === from.line ? to.column : undefined);
  return [marked, text].map((one) => one.replace(/\s+/g, ' ').trim());
}

/**
 * Two 32-bit sums of FNV-1a (Fowler, Noll, Vo; offset basis and prime from memory), the second over the text backwards.
 * Many thousand findings share no sum by chance.
 */
function digits(text: string): string {
  let forward = 0x811c9dc5;
  let backward = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) {
    forward = Math.imul(forward ^ text.charCodeAt(at), 0x01000193);
    backward = Math.imul(backward ^ text.charCodeAt(text.length - 1 - at), 0x01000193);
  }
  return [forward, backward].map((sum) => (sum >>> 0).toString(16).padStart(8, '0')).join('');
}
