/** Reads a comma-separated table with quoted fields; a row is a record by column name. */
export function readCsv(text: string): Record<string, string>[] {
  const rows: string[][] = [];
  let row: string[] = [];
  let field = '';
  let quoted = false;
  for (let i = 0; i < text.length; i += 1) {
    const c = text[i]!;
    if (quoted) {
      if (c !== '"') field += c;
      else if (text[i + 1] === '"') {
        field += '"';
        i += 1;
      } else quoted = false;
    } else if (c === '"') quoted = true;
    else if (c === ',' || c === '\n') {
      row.push(field);
      field = '';
      if (c === '\n') {
        rows.push(row);
        row = [];
      }
    } else if (c !== '\r') field += c;
  }
  if (field !== '' || row.length > 0) rows.push([...row, field]);
  const [head = [], ...body] = rows;
  return body.map((cells) => Object.fromEntries(head.map((name, i) => [name, cells[i] ?? ''])));
}
