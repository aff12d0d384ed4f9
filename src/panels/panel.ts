import { LitElement } from 'lit';
import { wish, type Wish } from './wish.ts';

/**
 * What every panel is: it renders into the page itself, so that one style sheet serves theme, projector and phone, and labels
 * reach across panels. Values come in as properties, wishes go out as events.
 */
export class Panel extends LitElement {
  #page: Element | null = null;

  override connectedCallback(): void {
    super.connectedCallback();
    this.#page = this.closest('body > *');
  }

  /** Sends a wish, also as a panel's last: from one that was taken out of the page it would reach nobody. */
  protected send(what: Wish): void {
    wish(this.isConnected ? this : (this.#page ?? this), what);
  }

  protected override createRenderRoot(): HTMLElement {
    return this;
  }
}
