"""What commands share: the call, its result, standard streams, passphrases and this machine's records."""
