/** Hands a text to the browser as a file to save. */
export function downloadText(name: string, type: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The browser has taken hold of the text by the next turn; a minute is for slow disks.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
