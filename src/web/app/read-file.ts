// A file a person chose, as text. Spreadsheets on some systems save in the Windows code page instead of UTF-8.

/** The file's text: UTF-8 where it is that, else Windows-1252. A byte order mark is left out. */
export async function readTextFile(file: File): Promise<string> {
  const bytes = await file.arrayBuffer();
  return decodeText(bytes);
}

/** Bytes to text, as `readTextFile` does. */
export function decodeText(bytes: ArrayBuffer | Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
