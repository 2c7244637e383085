import { describe, expect, test } from 'vitest';
import { checkPacketFile } from './check-packet-file.test.support.js';

const bytes = (text: string) => new TextEncoder().encode(text);
const svg = (inner: string) => bytes(`<svg xmlns="http://www.w3.org/2000/svg">${inner}</svg>`);

describe('the check of a file of the packet', () => {
  test('counts what acts', () => {
    expect(checkPacketFile('a.svg', svg('<text>&lt;script&gt;</text>'))).toEqual({});
    expect(checkPacketFile('a.svg', svg('<script/><g onload="x"/>'))).toEqual({
      onload: 1,
      script: 1,
    });
    expect(checkPacketFile('a.html', bytes('<p>a</p><img src="#x" onerror=x><b>'))).toEqual({
      b: 1,
      img: 1,
      onerror: 1,
    });
  });

  test.each([
    ['a.svg', '<svg xmlns="http://www.w3.org/2000/svg"><text>a & b</text></svg>'],
    ['a.svg', '<svg xmlns="http://www.w3.org/2000/svg"><a href="javascript:x"/></svg>'],
    ['a.html', '<script>Zq</script>'],
    ['a.html', '<p onclick="Zq">'],
    ['a.csv', 'name,size\nZq,1,2\n'],
    ['a.csv', 'name,size\n=1+1,2\n'],
    ['a.json', '{"name": "Z"q"}'],
    ['a.pdf', '%PDF-1.7 cut short'],
    ['a.exe', ''],
  ])('refuses %s: %s', (name, text) => {
    expect(() => checkPacketFile(name, bytes(text))).toThrow();
  });
});
