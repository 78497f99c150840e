"""How large the network is: what training and export must agree on."""
WIDTH, NARROW, FINE_LAYERS, COARSE_LAYERS, SKIP = 416, 144, 2, 7, .66
CONTEXT = 2 + FINE_LAYERS + 3 * COARSE_LAYERS
SUBSAMPLING = 3  # fixed in the engine
