"""What is wrong with a builder's file."""

from ..toml_source import FileFault

SheetFault = FileFault
