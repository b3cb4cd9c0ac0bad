/** `--data`: the folder where everything is kept, or FOREBOND_DATA. */
import { InvalidArgumentError, Option } from 'commander';

function folder(text: string): string {
  if (text.trim() === '') throw new InvalidArgumentError('name a folder.');
  return text;
}

export const dataOption = (words: string): Option =>
  new Option('--data <folder>', words).env('FOREBOND_DATA').argParser(folder);
