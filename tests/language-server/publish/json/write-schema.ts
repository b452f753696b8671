/** Writes language-server/publish/json/procedure.schema.json from the types (`npm run -s reference`). */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Schema, schemaOf } from './schema-of.ts';

const ROOM = fileURLToPath(new URL('../../../../language-server/publish/', import.meta.url));
export const SCHEMA_FILE = join(ROOM, 'json/procedure.schema.json');

export function procedureSchema(): Schema {
  return schemaOf(join(ROOM, 'json/json.ts'), 'PublishedProcedure', {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Published procedure',
    description: 'What `dowel publish --format json` writes for each procedure.',
  });
}

/** As the style of the project lays it out it is compared by content, not by letters. */
export function writeSchema(): void {
  writeFileSync(SCHEMA_FILE, `${JSON.stringify(procedureSchema(), undefined, 2)}\n`);
}
