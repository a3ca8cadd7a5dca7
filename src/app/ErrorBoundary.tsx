import { Component, type ReactNode } from 'react';

/** Shows a next step instead of a blank screen when drawing the page has failed. A class, because React asks for one. */
export class ErrorBoundary extends Component<
  { readonly title: string; readonly next: string; readonly children: ReactNode },
  { readonly error: Error | null }
> {
  override state: { readonly error: Error | null } = { error: null };

  static getDerivedStateFromError(error: Error): { readonly error: Error } {
    return { error };
  }

  override render(): ReactNode {
    const { error } = this.state;
    if (!error) return this.props.children;
    return (
      <main className="sheet failure" role="alert">
        <h1>{this.props.title}</h1>
        <p>{this.props.next}</p>
        <pre>{error.message}</pre>
        <p>
          <a href="./" onClick={() => location.replace(location.pathname)}>
            Ohmward
          </a>
        </p>
      </main>
    );
  }
}
