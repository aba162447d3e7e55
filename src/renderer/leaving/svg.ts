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

const MARGIN_PX = 20;
const TITLE_PX = 16;
const WORDS_PX = 13;
const LEADING = 1.4;

/** What a drawing has to say of itself where no page stands around it. */
export interface DrawingWords {
  readonly title: string;
  /** Paragraphs. */
  readonly below: readonly string[];
}

/** One drawing from those that lie over each other on screen, with its looks and its words written into it, on paper of the present theme. */
export function standaloneSvg(layers: readonly SVGSVGElement[], { title, below }: DrawingWords): SVGSVGElement {
  const [first] = layers;
  if (!first) throw new RangeError('Expected a drawing but received none');
  const { width, height } = first.getBoundingClientRect();
  const looks = getComputedStyle(first);
  const paragraphOf = (text: string, sizePx: number, weight: number) =>
    brokenAt(text, width, `${weight} ${sizePx}px ${looks.fontFamily}`).map((line) => ({ line, sizePx, weight }));
  const head = paragraphOf(title, TITLE_PX, 600);
  const foot = below.flatMap((text) => paragraphOf(text, WORDS_PX, 400));
  const heightOf = (lines: typeof head) => lines.reduce((sum, { sizePx }) => sum + LEADING * sizePx, 0);
  const drawingTop = MARGIN_PX + heightOf(head) + WORDS_PX;
  const footTop = drawingTop + height + WORDS_PX;

  const whole = svgElement('svg', { xmlns: SVG, width: width + 2 * MARGIN_PX, height: footTop + heightOf(foot) + MARGIN_PX });
  whole.setAttribute('viewBox', `0 0 ${whole.getAttribute('width')} ${whole.getAttribute('height')}`);
  const paper = getComputedStyle(document.documentElement).backgroundColor;
  whole.append(svgElement('rect', { width: '100%', height: '100%', fill: paper }));
  const write = (lines: typeof head, topPx: number): void => {
    let baseline = topPx;
    for (const { line, sizePx, weight } of lines) {
      baseline += LEADING * sizePx;
      const text = svgElement('text', { x: MARGIN_PX, y: baseline, fill: looks.color, 'font-size': sizePx, 'font-weight': weight });
      text.setAttribute('font-family', looks.fontFamily);
      text.textContent = line;
      fix(text, widthOf(line, `${weight} ${sizePx}px ${looks.fontFamily}`));
      whole.append(text);
    }
  };
  write(head, MARGIN_PX - WORDS_PX / 2);
  for (const layer of layers) {
    const group = svgElement('g', { transform: `translate(${MARGIN_PX} ${drawingTop})` });
    for (const child of layer.children) group.append(withLooks(child));
    whole.append(group);
  }
  write(foot, footTop - WORDS_PX / 2);
  return whole;
}

const SVG = 'http://www.w3.org/2000/svg';

function svgElement<Name extends keyof SVGElementTagNameMap>(
  name: Name,
  attributes: Readonly<Record<string, string | number>>,
): SVGElementTagNameMap[Name] {
  const element = document.createElementNS(SVG, name);
  for (const [attribute, value] of Object.entries(attributes)) element.setAttribute(attribute, String(value));
  return element;
}

/** A paragraph in lines no wider than a drawing. */
function brokenAt(text: string, widthPx: number, font: string): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && widthOf(longer, font) > widthPx) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line];
}

function widthOf(text: string, font: string): number {
  const pen = document.createElement('canvas').getContext('2d');
  if (!pen) throw new Error('Expected the browser to measure letters but it does not');
  pen.font = font;
  return pen.measureText(text).width;
}

/** Keeps words as wide as they are here: the file does not carry this page's letters, and others may be wider. */
function fix(text: Element, widthPx: number): void {
  if (widthPx <= 0) return;
  text.setAttribute('textLength', String(widthPx));
  text.setAttribute('lengthAdjust', 'spacingAndGlyphs');
}

function withLooks(element: Element): Element {
  // A link within the page leads nowhere from a file.
  const copy =
    element.localName === 'a' ? document.createElementNS('http://www.w3.org/2000/svg', 'g') : (element.cloneNode(false) as Element);
  copy.removeAttribute('class');
  const looks = getComputedStyle(element);
  for (const look of LOOKS) copy.setAttribute(look, looks.getPropertyValue(look));
  if (element instanceof SVGTextElement) fix(copy, element.getComputedTextLength());
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
