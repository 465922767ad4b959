"""How a gallery comes about: documents in, orders carried out in processes, results kept, a folder replaced whole."""
