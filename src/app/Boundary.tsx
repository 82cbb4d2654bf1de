/** A part of the page that fails says so and leaves the rest standing; what was done is kept on the device all the same. */
import { Component, type ComponentChildren } from 'preact';
import { text } from './preferences';

interface Props {
  readonly children: ComponentChildren;
}

export class Boundary extends Component<Props, { reason: string | null }> {
  override state = { reason: null };

  static override getDerivedStateFromError(error: unknown) {
    return { reason: error instanceof Error ? error.message : String(error) };
  }

  override componentDidCatch(error: unknown) {
    console.error(error);
  }

  override render() {
    const { reason } = this.state;
    if (reason === null) return this.props.children;
    return (
      <main class="home">
        <div class="stack" role="alert">
          <h1>{text.value.t('app.error.title')}</h1>
          <p>{text.value.t('app.error.boundary', { reason })}</p>
          <p>
            <a href="#home">{text.value.t('app.nav.home')}</a>
          </p>
        </div>
      </main>
    );
  }
}
