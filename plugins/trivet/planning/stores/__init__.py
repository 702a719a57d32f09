"""Which store gives what to whom, and when: the department's materials, classes and teachers together."""
