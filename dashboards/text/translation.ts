/**
 * What makes a catalogue in another language whole: every sentence of the English one, with the same
 * placeholders, and every table with the same keys. What is missing or misnamed does not compile.
 */
import type { en } from './en.ts';

type English = typeof en;

export type NamesIn<S extends string> = S extends `${string}{$${infer Name}}${infer Rest}`
  ? Name | NamesIn<Rest>
  : never;

type Table<T> = { readonly [K in keyof T]: string };
/** The English catalogue's shape, its sentences any text. */
export type Translation = {
  readonly [Id in keyof English]: English[Id] extends string ? string : Table<English[Id]>;
};

type Same<A, B> = [A] extends [B] ? ([B] extends [A] ? true : false) : false;
type Names<Text> = Text extends string ? NamesIn<Text> : never;
/** Ids whose placeholders are not those of the English sentence. */
type Misnamed<T extends Translation> = {
  [Id in keyof English]: Same<Names<English[Id]>, Names<T[Id]>> extends true ? never : Id;
}[keyof English];

/** Its argument; a catalogue with a placeholder of its own, or without one, is an error of types. */
export const translated = <const T extends Translation>(
  texts: T & ([Misnamed<T>] extends [never] ? unknown : { readonly misnamed: Misnamed<T> }),
): Translation => texts;
