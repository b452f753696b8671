/**
 * The whole site as files: an index with a search, a page for each procedure, machine and check. Pure: documents in,
 * a map from address to text out. Who writes it to a disk is the command line.
 */
import type { Check } from '../../checks/check.ts';
import type { ProcedureDocument, ProcedureLink } from '../document/types.ts';
import type { PageDrawings, PageLinks, RefusedPicture } from '../page/context.ts';
import type { Html } from '../page/html.ts';
import { local } from '../page/html.ts';
import { procedurePage } from '../page/page.ts';
import type { PictureSource } from '../page/pictures.ts';
import { type PageWords, pageWords } from '../words/page-words.ts';
import {
  CHECKS,
  checkAddress,
  depthOf,
  INDEX,
  MARKER,
  machineAddress,
  procedureAddress,
} from './addresses.ts';
import { checkPage, checksPage } from './check-pages.ts';
import { indexPage } from './index-page.ts';
import { machinePage } from './machine-page.ts';
import type { MachineSheet } from './machine-sheet.ts';

export interface SiteInput {
  language: 'en-GB' | 'en-US';
  procedures: readonly PublishedProcedure[];
  machines: readonly PublishedMachine[];
  checks: readonly Check[];
  pictures: PictureSource;
}

export interface PublishedProcedure {
  document: ProcedureDocument;
  /** The file it is written in, seen from the published folder, with `/`. */
  file: string;
  drawings?: PageDrawings;
}

export interface PublishedMachine {
  sheet: MachineSheet;
  file: string;
  drawings?: readonly { title: string; drawing: Html }[];
}

export interface Site {
  /** Address, with `/`, to text. */
  files: Map<string, string>;
  /** Pictures that could not be taken, in the order met. */
  refused: RefusedPicture[];
}

export function siteOf(input: SiteInput): Site {
  const files = new Map<string, string>();
  const refused: RefusedPicture[] = [];
  const words = pageWords(input.language);
  for (const { document, file, drawings } of input.procedures) {
    const address = procedureAddress(file, document.id);
    const page = procedurePage(document, {
      pictures: input.pictures,
      links: linksFrom(address, input),
      ...(drawings ? { drawings } : {}),
    });
    files.set(address, page.text);
    refused.push(...page.refused);
  }
  for (const machine of input.machines) {
    const address = machineAddress(machine.file, machine.sheet.name);
    files.set(address, machinePage(machine, own(input, machine), site(address, input, words)));
  }
  for (const check of input.checks) {
    const address = checkAddress(check.name);
    files.set(address, checkPage(check, site(address, input, words)));
  }
  files.set(CHECKS, checksPage(input.checks, site(CHECKS, input, words)));
  files.set(INDEX, indexPage(input, site(INDEX, input, words)));
  files.set(MARKER, MARKER_TEXT);
  return { files, refused };
}

/** What pages of the site share, seen from one of them. */
export interface SitePlace {
  words: PageWords;
  language: string;
  /** From this page to another of the site. */
  to(address: string): string;
  links: PageLinks;
}

function site(address: string, input: SiteInput, words: PageWords): SitePlace {
  const depth = depthOf(address);
  return {
    words,
    language: input.language,
    to: (target) => local(target, depth),
    links: linksFrom(address, input),
  };
}

function linksFrom(address: string, input: SiteInput): PageLinks {
  const depth = depthOf(address);
  const checks = new Set(input.checks.map((check) => check.name));
  return {
    home: local(INDEX, depth),
    procedure(link) {
      const found =
        input.procedures.find((one) => sameProcedure(one, link)) ??
        input.procedures.find((one) => one.document.id === link.id);
      return found && local(procedureAddress(found.file, found.document.id), depth);
    },
    machine(id) {
      const found = input.machines.find((one) => one.sheet.name === id);
      return found && local(machineAddress(found.file, found.sheet.name), depth);
    },
    check: (name) => (checks.has(name) ? local(checkAddress(name), depth) : undefined),
  };
}

function sameProcedure(one: PublishedProcedure, link: Pick<ProcedureLink, 'id' | 'file'>): boolean {
  return one.document.id === link.id && (one.file === link.file || link.file.endsWith(`/${one.file}`));
}

function own(input: SiteInput, machine: PublishedMachine): PublishedProcedure[] {
  return input.procedures.filter(({ document }) =>
    document.machines.some(({ id }) => id === machine.sheet.name),
  );
}

export const MARKER_TEXT = `This folder was made by "dowel publish" and is replaced as a whole the next time.
Without this file it is not touched. Do not keep anything else here.
`;
