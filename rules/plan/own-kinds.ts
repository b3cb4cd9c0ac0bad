/** Rule kinds and derived kinds that a site brings in files of its own, beside the ones everybody has. */
import { derivedKinds } from '../derive/derived.ts';
import type { DerivedKind } from '../derive/derived-kind.ts';
import { ruleKinds } from '../kinds/all.ts';
import type { RuleKind } from '../kinds/kind.ts';

export interface OwnKinds {
  readonly rules: ReadonlyMap<string, RuleKind>;
  readonly derived: ReadonlyMap<string, DerivedKind>;
}

export const noOwnKinds: OwnKinds = { rules: new Map(), derived: new Map() };

export const ruleKindOf = (own: OwnKinds, name: string): RuleKind | undefined =>
  ruleKinds.get(name) ?? own.rules.get(name);

export const derivedKindOf = (own: OwnKinds, name: string): DerivedKind | undefined =>
  derivedKinds.get(name) ?? own.derived.get(name);

export const ruleKindNames = (own: OwnKinds): string[] => [
  ...ruleKinds.keys(),
  ...own.rules.keys(),
];

export const derivedKindNames = (own: OwnKinds): string[] => [
  ...derivedKinds.keys(),
  ...own.derived.keys(),
];
