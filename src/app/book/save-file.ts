/** Hands a file to the browser to be saved. */
export function saveFile(name: string, type: string, content: BlobPart): void {
  const url = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser has taken the address by the time the click is done with.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
