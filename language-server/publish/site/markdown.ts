/**
 * The little Markdown of the checks' explanations: paragraphs, lists, code, emphasis. Anything else is text. What it
 * makes is escaped like all else.
 */
import { type Html, html } from '../page/html.ts';

export function markdown(text: string): Html {
  const blocks = text.trim().split(/\n\s*\n/);
  return html`${blocks.map(block)}`;
}

function block(text: string): Html {
  const lines = text.split('\n').map((line) => line.trim());
  const items = lines.filter((line) => line.startsWith('- '));
  if (items.length > 0 && lines[0]!.startsWith('- ')) {
    // A line that does not begin an item goes on with the one before.
    const whole = lines.reduce<string[]>((list, line) => {
      if (line.startsWith('- ')) list.push(line.slice(2));
      else list[list.length - 1] += ` ${line}`;
      return list;
    }, []);
    return html`<ul>${whole.map((item) => html`<li>${inline(item)}</li>`)}</ul>`;
  }
  return html`<p>${inline(lines.join(' '))}</p>`;
}

/** Code, bold and emphasis in a line. */
export function inline(text: string): Html {
  const pieces = text.split(/(`[^`]+`|\*\*[^*]+\*\*|\*[^*\s][^*]*\*)/);
  return html`${pieces.map((piece) => {
    if (piece.length > 2 && piece.startsWith('`') && piece.endsWith('`'))
      return html`<code>${piece.slice(1, -1)}</code>`;
    if (piece.length > 4 && piece.startsWith('**') && piece.endsWith('**'))
      return html`<strong>${piece.slice(2, -2)}</strong>`;
    if (piece.length > 2 && piece.startsWith('*') && piece.endsWith('*'))
      return html`<em>${piece.slice(1, -1)}</em>`;
    return piece;
  })}`;
}
