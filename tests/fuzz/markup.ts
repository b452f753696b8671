/** Texts by chance as they are published: with markup in some of their words, whole more often than broken. */
import { input, SAMPLES } from './inputs.ts';
import { Random } from './random.ts';

/** What no page may contain as it stands here. */
export const MARKUP = "<b onclick='x'>";
const HOSTILE = [`${MARKUP}&amp;]]>`, '</script><!--', '\\u0000', '\u0001', '\ufffe', '{cover}', '"'];

export function published(seed: number): string {
  const random = new Random(seed);
  const text = random.below(2) === 0 ? random.of(SAMPLES) : input(seed).text;
  return text.replaceAll(/"[^"\n]*"/g, (said) =>
    random.below(3) === 0 ? `"${said.slice(1, -1)}${random.of(HOSTILE)}"` : said,
  );
}
