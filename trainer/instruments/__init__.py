"""What a bench can measure on the same circuit that sounds: readings with unit, accuracy and display."""
