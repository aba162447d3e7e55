/** What a drawing's looks are made of; the page's style sheet does not travel with it. */
const LOOKS = [
  'fill',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linecap',
  'opacity',
  'font-family',
  'font-size',
  'font-weight',
  'text-anchor',
] as const;

/** One drawing from those that lie over each other on screen, with its looks written into it, on paper of the present theme. */
export function standaloneSvg(layers: readonly SVGSVGElement[]): SVGSVGElement {
  const [first] = layers;
  if (!first) throw new RangeError('Expected a drawing but received none');
  const { width, height } = first.getBoundingClientRect();
  const whole = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
  whole.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  whole.setAttribute('width', String(width));
  whole.setAttribute('height', String(height));
  whole.setAttribute('viewBox', `0 0 ${width} ${height}`);
  const paper = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
  paper.setAttribute('width', '100%');
  paper.setAttribute('height', '100%');
  paper.setAttribute('fill', getComputedStyle(document.documentElement).backgroundColor);
  whole.append(paper);
  for (const layer of layers) {
    const group = document.createElementNS('http://www.w3.org/2000/svg', 'g');
    for (const child of layer.children) group.append(withLooks(child));
    whole.append(group);
  }
  return whole;
}

function withLooks(element: Element): Element {
  // A link within the page leads nowhere from a file.
  const copy =
    element.localName === 'a' ? document.createElementNS('http://www.w3.org/2000/svg', 'g') : (element.cloneNode(false) as Element);
  copy.removeAttribute('class');
  const looks = getComputedStyle(element);
  for (const look of LOOKS) copy.setAttribute(look, looks.getPropertyValue(look));
  for (const child of element.childNodes) copy.append(child instanceof Element ? withLooks(child) : child.cloneNode(true));
  return copy;
}

export function svgBlob(drawing: SVGSVGElement): Blob {
  return new Blob([new XMLSerializer().serializeToString(drawing)], { type: 'image/svg+xml' });
}

/** The drawing as a PNG, `perPx` dots for each of its pixels. */
export async function pngOf(drawing: SVGSVGElement, perPx: number): Promise<Blob> {
  const address = URL.createObjectURL(svgBlob(drawing));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(drawing.viewBox.baseVal.width * perPx);
    canvas.height = Math.round(drawing.viewBox.baseVal.height * perPx);
    const context = canvas.getContext('2d');
    if (!context) throw new Error('Expected the browser to draw on a canvas but it does not');
    context.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await new Promise((done, failed) =>
      canvas.toBlob((blob) => (blob ? done(blob) : failed(new Error('Expected a PNG but the browser made none'))), 'image/png'),
    );
  } finally {
    URL.revokeObjectURL(address);
  }
}
