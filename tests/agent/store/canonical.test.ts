// Vectors: repository cyberphone/json-canonicalization, testdata/; numbers: RFC 8785, Appendix B
// (from memory of the RFC; several seen in the repository's testdata/README). SHA-256 computed.
import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { canonicalJson } from '#agent/store/canonical.ts';

const documents = [
  {
    name: 'arrays',
    input: '[56,{"d":true,"10":null,"1":[ ]}]',
    output: '[56,{"1":[],"10":null,"d":true}]',
    sha256: '099601b171cafed97c333f8878d68e7f8c8f795412adb34b2fdcf0e7c7beac42',
  },
  {
    name: 'structures',
    input:
      '{"1":{"f":{"f":"hi","F":5},"\\n":56.0},"10":{},"":"empty","a":{},"111":[{"e":"yes","E":"no"}],"A":{}}',
    output:
      '{"":"empty","1":{"\\n":56,"f":{"F":5,"f":"hi"}},"10":{},"111":[{"E":"no","e":"yes"}],"A":{},"a":{}}',
    sha256: '605f65004ec2db7692522a0852c22f1c989e036d547e88963d1a3143cf3195d5',
  },
  {
    name: 'values',
    input:
      '{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\\u20ac$\\u000F\\u000aA\'\\u0042\\u0022\\u005c\\\\\\"\\/","literals":[null,true,false]}',
    output:
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    sha256: '2d5e01a318d0f0879ab568c4be289c8b1f64ef8921a53c6277d5e069978baacb',
  },
  {
    name: 'unicode, not normalised',
    input: '{"Unnormalized Unicode":"A\\u030a"}',
    output: '{"Unnormalized Unicode":"A\u030a"}',
    sha256: '0d99aad92a125196ff887876643fd3206786a84ddce2cee52ba4ad256d2381d3',
  },
  {
    name: 'french',
    input:
      '{"peach":"This sorting order","p\\u00e9ch\\u00e9":"is wrong according to French","p\\u00eache":"but canonicalization MUST","sin":"ignore locale"}',
    output:
      '{"peach":"This sorting order","péché":"is wrong according to French","pêche":"but canonicalization MUST","sin":"ignore locale"}',
    sha256: 'd99d0ebdcb0033cb858cfa830ae46bc0fb3309413b271f1da828c89901a27ed5',
  },
  {
    name: 'weird, surrogates before U+FB33',
    input:
      '{"\\u20ac":"Euro Sign","\\r":"Carriage Return","\\u000a":"Newline","1":"One","\\u0080":"Control\\u007f","\\ud83d\\ude02":"Smiley","\\u00f6":"Latin Small Letter O With Diaeresis","\\ufb33":"Hebrew Letter Dalet With Dagesh","</script>":"Browser Challenge"}',
    output:
      '{"\\n":"Newline","\\r":"Carriage Return","1":"One","</script>":"Browser Challenge","\u0080":"Control\u007f","ö":"Latin Small Letter O With Diaeresis","€":"Euro Sign","😂":"Smiley","\ufb33":"Hebrew Letter Dalet With Dagesh"}',
    sha256: '6af595a9aa80110b964b4de3f82a05fa6ae7423005019bacfa2620dddc4e94d1',
  },
] as const;

describe('RFC 8785 documents', () => {
  for (const { name, input, output, sha256 } of documents) {
    test(name, () => {
      const text = canonicalJson(JSON.parse(input));
      expect(text).toBe(output);
      expect(createHash('sha256').update(text, 'utf8').digest('hex')).toBe(sha256);
    });
  }
});

const numbers = [
  ['0000000000000000', '0'],
  ['8000000000000000', '0'],
  ['0000000000000001', '5e-324'],
  ['8000000000000001', '-5e-324'],
  ['7fefffffffffffff', '1.7976931348623157e+308'],
  ['ffefffffffffffff', '-1.7976931348623157e+308'],
  ['4340000000000000', '9007199254740992'],
  ['c340000000000000', '-9007199254740992'],
  ['4430000000000000', '295147905179352830000'],
  ['44b52d02c7e14af5', '9.999999999999997e+22'],
  ['44b52d02c7e14af6', '1e+23'],
  ['44b52d02c7e14af7', '1.0000000000000001e+23'],
  ['444b1ae4d6e2ef4e', '999999999999999700000'],
  ['444b1ae4d6e2ef4f', '999999999999999900000'],
  ['444b1ae4d6e2ef50', '1e+21'],
  ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
  ['3eb0c6f7a0b5ed8d', '0.000001'],
  ['41b3de4355555553', '333333333.3333332'],
  ['41b3de4355555554', '333333333.33333325'],
  ['41b3de4355555555', '333333333.3333333'],
  ['41b3de4355555556', '333333333.3333334'],
  ['41b3de4355555557', '333333333.33333343'],
  ['becbf647612f3696', '-0.0000033333333333333333'],
  ['43143ff3c1cb0959', '1424953923781206.2'],
] as const;

describe('RFC 8785 numbers', () => {
  for (const [hex, text] of numbers) {
    test(`${hex} is ${text}`, () => {
      expect(canonicalJson(Buffer.from(hex, 'hex').readDoubleBE(0))).toBe(text);
    });
  }
});

describe('what JSON cannot say is refused, at any depth', () => {
  const refused: [string, unknown][] = [
    ['NaN', Number.NaN],
    ['Infinity', Number.POSITIVE_INFINITY],
    ['-Infinity', Number.NEGATIVE_INFINITY],
    ['a lone high surrogate', '\ud83d'],
    ['a lone low surrogate', '\ude02x'],
  ];
  for (const [name, value] of refused) {
    test(name, () => {
      expect(() => canonicalJson(value)).toThrow();
      expect(() => canonicalJson({ a: [{ b: value }] })).toThrow();
    });
  }
  test('a lone surrogate in a key', () => {
    expect(() => canonicalJson({ '\ud83d': 1 })).toThrow();
  });
  test('undefined, and a cycle', () => {
    const cycle: Record<string, unknown> = {};
    cycle.self = cycle;
    expect(() => canonicalJson(undefined)).toThrow(TypeError);
    expect(() => canonicalJson(cycle)).toThrow();
  });
});
