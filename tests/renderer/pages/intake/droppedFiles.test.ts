import { describe, expect, test } from 'vitest';
import { droppedFiles } from '../../../../src/renderer/pages/intake/droppedFiles.ts';

function fileEntry(name: string): FileSystemEntry {
  return {
    isFile: true,
    isDirectory: false,
    name,
    file: (done: (file: File) => void) => done(new File(['x'], name)),
  } as unknown as FileSystemEntry;
}

/** Answers its children in portions of `portion`, then an empty one (File and Directory Entries API, readEntries). */
function folderEntry(name: string, children: FileSystemEntry[], portion = 2): FileSystemEntry {
  const createReader = () => {
    const left = [...children];
    return { readEntries: (done: (entries: FileSystemEntry[]) => void) => done(left.splice(0, portion)) };
  };
  return { isFile: false, isDirectory: true, name, createReader } as unknown as FileSystemEntry;
}

function dropOf(items: { kind?: string; entry?: FileSystemEntry | null; file?: File | null }[]): DataTransfer {
  return {
    items: items.map(({ kind = 'file', entry = null, file = null }) => ({ kind, webkitGetAsEntry: () => entry, getAsFile: () => file })),
  } as unknown as DataTransfer;
}

describe('the files of a drop', () => {
  test('are those dropped and those in dropped folders, however deep and however many', async () => {
    const card = folderEntry('DCIM', [
      fileEntry('1.jpg'),
      folderEntry('100', [fileEntry('2.jpg'), fileEntry('3.jpg'), fileEntry('4.jpg')]),
      fileEntry('5.jpg'),
    ]);
    const files = await droppedFiles(dropOf([{ entry: fileEntry('0.jpg') }, { entry: card }]));
    expect(files.map((file) => file.name)).toEqual(['0.jpg', '1.jpg', '2.jpg', '3.jpg', '4.jpg', '5.jpg']);
  });

  test('leave out what is hidden and what is no file', async () => {
    const card = folderEntry('card', [fileEntry('.system'), fileEntry('1.jpg'), folderEntry('.trash', [fileEntry('2.jpg')])]);
    const files = await droppedFiles(dropOf([{ kind: 'string' }, { entry: card }]));
    expect(files.map((file) => file.name)).toEqual(['1.jpg']);
  });

  test('are taken as they are where the browser gives no entries', async () => {
    const file = new File(['x'], 'pasted.png');
    expect(await droppedFiles(dropOf([{ file }, { file: null }]))).toEqual([file]);
  });

  test('a file that cannot be opened fails the drop, so that it can be said', async () => {
    const gone = { ...fileEntry('gone.jpg'), file: (_: unknown, failed: (error: Error) => void) => failed(new Error('NotFoundError')) };
    await expect(droppedFiles(dropOf([{ entry: gone as unknown as FileSystemEntry }]))).rejects.toThrow('NotFoundError');
  });
});
