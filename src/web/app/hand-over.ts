/** Milliseconds after which a browser has surely taken a file over. */
const longestTaking = 60_000;

/** Gives the browser a file to put where it puts downloads. */
export function handOver(file: Blob, name: string): void {
  const url = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), longestTaking);
}
