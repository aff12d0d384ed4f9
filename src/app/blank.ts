/** Paper over everything, and nothing else: the class looks at whoever speaks. A press anywhere takes it away. */
export class Blank {
  readonly #root: HTMLElement;
  readonly #paper: HTMLButtonElement;
  /** Time stood still before. */
  stood = false;

  constructor(root: HTMLElement, pressed: () => void) {
    this.#root = root;
    this.#paper = root.ownerDocument.createElement('button');
    this.#paper.type = 'button';
    this.#paper.className = 'blank-paper';
    this.#paper.setAttribute('aria-label', 'The stage is blank. Show it again.');
    this.#paper.addEventListener('click', pressed);
  }

  get on(): boolean {
    return this.#paper.isConnected;
  }

  show(): void {
    this.#root.inert = true;
    this.#root.ownerDocument.body.append(this.#paper);
    this.#paper.focus({ preventScroll: true });
  }

  away(): void {
    this.#root.inert = false;
    this.stood = false;
    this.#paper.remove();
  }
}
