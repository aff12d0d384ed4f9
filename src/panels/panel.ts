import { LitElement } from 'lit';

/**
 * What every panel is: it renders into the page itself, so that one style sheet serves theme, projector and phone, and labels
 * reach across panels. Values come in as properties, wishes go out as events.
 */
export class Panel extends LitElement {
  protected override createRenderRoot(): HTMLElement {
    return this;
  }
}
