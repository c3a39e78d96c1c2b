//! The imports of a wasm file, read and written anew. Source: WebAssembly Core Specification 2.0, section 5.5.5.

use anyhow::{Context, Result, bail, ensure};

/// The id of the section that names the imports.
const IMPORTS: u8 = 2;

/// What marks the import of a function.
const FUNCTION: u8 = 0;

/// A function that the file asks for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Import {
    pub(super) module: String,
    pub(super) name: String,
    /// The place of its type in the file.
    kind: usize,
}

/// A wasm file, taken apart at its imports.
#[derive(Debug)]
pub(super) struct Wasm<'a> {
    before: &'a [u8],
    pub(super) imports: Vec<Import>,
    after: &'a [u8],
}

impl<'a> Wasm<'a> {
    pub(super) fn read(file: &'a [u8]) -> Result<Self> {
        // The magic word and the version.
        let mut rest = Reader(file);
        rest.take(8)?;
        loop {
            let before = file.len() - rest.0.len();
            let id = rest.byte().context("it imports nothing")?;
            let length = rest.number()?;
            let section = rest.take(length)?;
            if id == IMPORTS {
                return Ok(Self { before: &file[..before], imports: Reader(section).imports()?, after: rest.0 });
            }
        }
    }

    pub(super) fn write(&self) -> Vec<u8> {
        let mut section = Vec::new();
        push_number(&mut section, self.imports.len());
        for Import { module, name, kind } in &self.imports {
            push_bytes(&mut section, module.as_bytes());
            push_bytes(&mut section, name.as_bytes());
            section.push(FUNCTION);
            push_number(&mut section, *kind);
        }
        let mut file = self.before.to_vec();
        file.push(IMPORTS);
        push_bytes(&mut file, &section);
        file.extend(self.after);
        file
    }
}

/// What is not yet read.
struct Reader<'a>(&'a [u8]);

impl<'a> Reader<'a> {
    fn take(&mut self, count: usize) -> Result<&'a [u8]> {
        let (taken, rest) = self.0.split_at_checked(count).context("the file ends too soon")?;
        self.0 = rest;
        Ok(taken)
    }

    fn byte(&mut self) -> Result<u8> {
        Ok(self.take(1)?[0])
    }

    /// Seven bits a byte, the least ones first.
    fn number(&mut self) -> Result<usize> {
        let mut number = 0;
        for shift in (0..32).step_by(7) {
            let byte = self.byte()?;
            number |= usize::from(byte & 127) << shift;
            if byte < 128 {
                return Ok(number);
            }
        }
        bail!("a number has too many bytes")
    }

    fn text(&mut self) -> Result<String> {
        let length = self.number()?;
        Ok(str::from_utf8(self.take(length)?)?.to_owned())
    }

    fn imports(mut self) -> Result<Vec<Import>> {
        let imports = (0..self.number()?).map(|_| {
            let (module, name) = (self.text()?, self.text()?);
            ensure!(self.byte()? == FUNCTION, "{name} is imported and no function");
            Ok(Import { module, name, kind: self.number()? })
        });
        imports.collect()
    }
}

fn push_number(bytes: &mut Vec<u8>, mut number: usize) {
    loop {
        let low = number.to_le_bytes()[0] & 127;
        number >>= 7;
        if number == 0 {
            return bytes.push(low);
        }
        bytes.push(low | 128);
    }
}

fn push_bytes(bytes: &mut Vec<u8>, more: &[u8]) {
    push_number(bytes, more.len());
    bytes.extend(more);
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A type section, then imports, then what no one here reads.
    const FILE: &[u8] = b"\0asm\x01\0\0\0\x01\x04\x01\x60\0\0\x02\x0e\x02\x01m\x02ab\0\0\x01m\x01c\0\x01\x0a\x01\0";

    #[test]
    fn a_file_is_written_as_it_was_read() -> Result<()> {
        let wasm = Wasm::read(FILE)?;
        let names: Vec<&str> = wasm.imports.iter().map(|import| import.name.as_str()).collect();
        assert_eq!(names, ["ab", "c"]);
        assert_eq!(wasm.write(), FILE);
        Ok(())
    }

    #[test]
    fn a_number_of_any_length_is_read_as_it_was_written() -> Result<()> {
        for number in [0, 127, 128, 16_383, 16_384, 0xFFFF_FFFF] {
            let mut bytes = Vec::new();
            push_number(&mut bytes, number);
            assert_eq!(Reader(&bytes).number()?, number);
        }
        // Source: DWARF Debugging Information Format 4, figure 22.
        let mut bytes = Vec::new();
        push_number(&mut bytes, 12_857);
        assert_eq!(bytes, [57 + 0x80, 100]);
        Ok(())
    }

    #[test]
    fn a_broken_file_is_refused() {
        for end in 0..24 {
            assert!(Wasm::read(&FILE[..end]).is_err(), "{end}");
        }
    }
}
