/** Hands a file to the keeper the way the browser or the desktop window saves any other. */
export function saveFile(name: string, content: Blob): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName(name);
  link.click();
  // The download reads from the address after this returns.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** Without the characters that no file system takes everywhere. */
export function fileName(name: string): string {
  return name
    .replace(/[\\/:*?"<>|\p{Cc}]+/gu, '-')
    .replace(/\s+/g, ' ')
    .trim();
}
