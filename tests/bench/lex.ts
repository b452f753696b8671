/** The yardstick in the same process: cutting the same text into tokens with one sticky regular expression. */

const TOKEN =
  /[ \t\r\n]+|\/\/[^\n]*|"(?:[^"\\\n]|\\.)*"?|[A-Za-z][A-Za-z0-9-]*|#[A-Za-z0-9]+|[0-9]+(?:[./x][0-9]+)*|./suy;

/** How many tokens the text has. */
export function lex(text: string): number {
  TOKEN.lastIndex = 0;
  let count = 0;
  while (TOKEN.lastIndex < text.length && TOKEN.test(text)) count++;
  return count;
}
