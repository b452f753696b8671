/**
 * Pictures of a page, put into it as data. What a file is, its first bytes say, never its name. Where the bytes come
 * from is the business of who asks (../../cli/picture-files.ts reads the folder).
 */
import { base64 } from './base64.ts';

/** A picture as it was found, or why there is none: words that follow "The picture … ". */
export type PictureFile = { bytes: Uint8Array } | { refused: string };

/** Gives the picture that the file `from` names `path`. */
export type PictureSource = (from: string, path: string) => PictureFile;

/** Bytes. A page with larger pictures is slow to open in the yard. */
export const PICTURE_LIMIT = 4 * 1024 * 1024;

/** The picture as an address of its own data, or why not. */
export function pictureData(picture: PictureFile): { address: string } | { refused: string } {
  if ('refused' in picture) return picture;
  const { bytes } = picture;
  if (bytes.length > PICTURE_LIMIT)
    return { refused: `has ${Math.ceil(bytes.length / 1024 / 1024)} MB; at most 4 MB go into a page` };
  const type = pictureType(bytes);
  if (type === undefined)
    return { refused: 'is no PNG, JPEG, GIF, WebP or AVIF picture, whatever its name says' };
  return { address: `data:${type};base64,${base64(bytes)}` };
}

/**
 * The media type by the first bytes (signatures of the WHATWG MIME Sniffing Standard, section 6.1). SVG is left out: it
 * is a document of its own, with links and scripts.
 */
export function pictureType(bytes: Uint8Array): string | undefined {
  const begins = (offset: number, signature: string) =>
    [...signature].every((char, i) => bytes[offset + i] === char.charCodeAt(0));
  if (begins(0, '\x89PNG\r\n\x1a\n')) return 'image/png';
  if (begins(0, '\xff\xd8\xff')) return 'image/jpeg';
  if (begins(0, 'GIF87a') || begins(0, 'GIF89a')) return 'image/gif';
  if (begins(0, 'RIFF') && begins(8, 'WEBPVP')) return 'image/webp';
  if (begins(4, 'ftypavif')) return 'image/avif';
  return undefined;
}
