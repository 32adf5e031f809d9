/** The blob of a media type that base64 text stands for. */
export const base64ToBlob = (data: string, type: string): Blob =>
  new Blob([Uint8Array.from(atob(data), (c) => c.charCodeAt(0))], { type });

/** The bytes of a blob as base64 text. */
export async function blobToBase64(blob: Blob): Promise<string> {
  const bytes = new Uint8Array(await blob.arrayBuffer());
  let text = '';
  // In pieces: a call takes only so many arguments.
  for (let at = 0; at < bytes.length; at += 0x8000)
    text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  return btoa(text);
}
