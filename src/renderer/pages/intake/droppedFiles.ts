/** The files of a drop, those in dropped folders included; hidden files (system leftovers of cards) are left out. */
export async function droppedFiles(transfer: DataTransfer): Promise<File[]> {
  // The list of items is emptied once the event is over, so entries and files are taken out before the first wait.
  const entries = [...transfer.items].filter((item) => item.kind === 'file').map((item) => item.webkitGetAsEntry() ?? item.getAsFile());
  const files = await Promise.all(entries.map((entry) => (entry === null ? [] : entry instanceof File ? [entry] : filesUnder(entry))));
  return files.flat();
}

async function filesUnder(entry: FileSystemEntry): Promise<File[]> {
  if (entry.name.startsWith('.')) return [];
  if (isFile(entry)) return [await new Promise<File>((resolve, reject) => entry.file(resolve, reject))];
  if (!isFolder(entry)) return [];
  const reader = entry.createReader();
  const files: File[] = [];
  // A reader answers in portions, and with an empty one at the end.
  for (let portion = await read(reader); portion.length > 0; portion = await read(reader)) {
    for (const child of portion) files.push(...(await filesUnder(child)));
  }
  return files;
}

function read(reader: FileSystemDirectoryReader): Promise<FileSystemEntry[]> {
  return new Promise((resolve, reject) => reader.readEntries(resolve, reject));
}

function isFile(entry: FileSystemEntry): entry is FileSystemFileEntry {
  return entry.isFile;
}

function isFolder(entry: FileSystemEntry): entry is FileSystemDirectoryEntry {
  return entry.isDirectory;
}
