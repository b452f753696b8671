/** A whole program that checks a JSON file against a schema with ajv: what a script of that kind would be. */
import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';

const [schema, file] = process.argv.slice(2);
const validate = new Ajv({ allErrors: true }).compile(JSON.parse(readFileSync(schema!, 'utf8')));
if (!validate(JSON.parse(readFileSync(file!, 'utf8')))) {
  process.stdout.write(`${JSON.stringify(validate.errors, null, 2)}\n`);
  process.exitCode = 1;
}
