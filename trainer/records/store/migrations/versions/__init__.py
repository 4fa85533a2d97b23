"""Steps from one version of the store's tables to the next."""
