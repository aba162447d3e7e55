import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { type Axis, ValueAxis } from '../../../../src/renderer/pages/ladder/chart/ValueAxis.tsx';

describe('the axis of values', () => {
  const drawn = (axis: Axis) =>
    renderToStaticMarkup(<ValueAxis scale={(value) => value} ticks={[5, 10]} unit="mm" axis={axis} widthPx={400} />);

  it('says that it is logarithmic where it is', () => {
    expect(drawn('logarithmic')).toContain('>mm, logarithmic<');
    expect(drawn('even')).toContain('>mm<');
  });
});
