/** The code points that the WebDriver standard (section 17.4.2) gives to keys that write nothing. */
const CODES: Readonly<Record<string, string>> = {
  Backspace: '\uE003',
  Tab: '\uE004',
  Enter: '\uE007',
  Shift: '\uE008',
  Control: '\uE009',
  Alt: '\uE00A',
  Escape: '\uE00C',
  Space: ' ',
  PageUp: '\uE00E',
  PageDown: '\uE00F',
  End: '\uE010',
  Home: '\uE011',
  ArrowLeft: '\uE012',
  ArrowUp: '\uE013',
  ArrowRight: '\uE014',
  ArrowDown: '\uE015',
  Delete: '\uE017',
};

/** A key such as `Control+a` as the actions that press and release it. */
export function keyActions(key: string): readonly object[] {
  // A lone "+" is a key too.
  const parts = key.length === 1 ? [key] : key.split('+');
  const values = parts.map((part) => {
    const value = CODES[part] ?? (part.length === 1 ? part : undefined);
    if (value === undefined) throw new Error(`there is no key "${part}"`);
    return value;
  });
  const press = (type: 'keyDown' | 'keyUp') => (value: string) => ({ type, value });
  return [
    {
      type: 'key',
      id: 'keyboard',
      actions: [...values.map(press('keyDown')), ...[...values].reverse().map(press('keyUp'))],
    },
  ];
}
