import { fuzzes } from './range.ts';

fuzzes(1, 10_000);
