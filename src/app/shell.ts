import { render } from 'lit';
import { WishEvent, fetchSheets, type Wish } from '../panels/index.ts';
import { FIRST_VIEW, type PageView } from './page-view.ts';
import { page } from './page.ts';
import { remember, remembered, shelfOf } from './remembered.ts';

/** The page as it stands from the first paint on: shows a view, hears wishes, and keeps what a person chose. */
export class Shell {
  readonly root: HTMLElement;
  readonly window: Window;
  #view: PageView;
  #heard: (wish: Wish) => void = () => undefined;
  /** Hears that another place is shown, or another demonstration. */
  onPlace: () => void = () => undefined;

  constructor(root: HTMLElement, view: Window) {
    this.root = root;
    this.window = view;
    this.#view = { ...FIRST_VIEW, settings: remembered(shelfOf(view)) };
    view.matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => this.show({}));
    root.addEventListener('wish', (event) => {
      if (event instanceof WishEvent) this.#hear(event.wish);
    });
    this.show({});
  }

  get view(): PageView {
    return this.#view;
  }

  get theme(): 'light' | 'dark' {
    const { theme } = this.#view.settings;
    if (theme !== 'system') return theme;
    return this.window.matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
  }

  /** Who decides about wishes once flying was fetched. */
  set onWish(heard: (wish: Wish) => void) {
    this.#heard = heard;
  }

  /** Shows the view with these parts changed. */
  show(change: Partial<PageView>): void {
    // No presenting yet and nothing shown are the same place.
    const shown = this.#view.presenting?.shown ?? null;
    this.#view = { ...this.#view, ...change };
    const { dataset } = this.root.ownerDocument.documentElement;
    dataset.theme = this.theme;
    dataset.place = this.#view.place;
    dataset.asked = String(this.#view.prompt !== null);
    dataset.projector = String(this.#view.projector);
    dataset.swapped = String(this.#view.settings.swapped);
    render(page(this.#view), this.root);
    if (change.place || (this.#view.presenting?.shown ?? null) !== shown) this.onPlace();
  }

  /** What the shell can do alone, before and without a dive. */
  #hear(wish: Wish): void {
    if (wish.kind === 'settings') this.#keep(wish.settings);
    else if (wish.kind === 'caution-read') this.#keep({ cautionRead: true });
    else if (wish.kind === 'problems-read') this.show({ trouble: '', problems: [] });
    else if (wish.kind === 'more') void this.#more(wish.open);
    this.#heard(wish);
  }

  /** Opens *more* once it is there: a page must not wait for a sheet that does not come. */
  async #more(open: boolean): Promise<void> {
    try {
      if (open) await fetchSheets();
      this.show({ moreOpen: open });
    } catch {
      this.show({
        trouble: 'This part of the program was not loaded. Check the connection and try again, or load the page again.',
      });
    }
  }

  #keep(change: Partial<PageView['settings']>): void {
    const settings = { ...this.#view.settings, ...change };
    const kept = remember(shelfOf(this.window), settings);
    this.show({ settings });
    // What was not chosen need not be kept: a caution that was met is met again.
    if (!kept && !this.#view.trouble && !('cautionRead' in change))
      this.show({ trouble: 'This browser keeps nothing for us: your choice holds until you close the page.' });
  }
}
