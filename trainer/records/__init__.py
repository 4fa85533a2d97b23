"""What is kept of attempts, and what is made of it: the store, bundles, class reports, exports, papers."""
