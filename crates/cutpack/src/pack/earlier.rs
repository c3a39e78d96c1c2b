//! How an earlier pack was cut, by its manifest: for who cuts a damaged part of it again.

use slotwright_core::input::fault::{ReadError, Wanted};
use slotwright_core::input::members::{Place, parse};
use slotwright_core::input::seal::Digest;
use slotwright_core::range::{Batch, Key};
use slotwright_core::units::quantity::Length;

use super::CutBy;
use super::manifest::{FORMAT, VERSION};
use super::papers::Papers;

/// An earlier pack.
#[derive(Clone, Debug, PartialEq)]
pub struct Earlier {
    /// The version of the program that made it.
    pub program: String,
    /// Its name.
    pub name: String,
    /// On which paper.
    pub papers: Papers,
    /// Its orders.
    pub orders: Vec<EarlierOrder>,
    lots: Vec<EarlierLot>,
}

/// An order that it cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct EarlierOrder {
    /// The number that it had.
    pub number: u32,
    /// Its digest.
    pub digest: Digest,
    /// That of its parts as they were cut.
    pub cut_digest: Digest,
}

/// By what a lot was cut.
#[derive(Clone, Debug, PartialEq)]
struct EarlierLot {
    board: Key,
    batch: Option<Batch>,
    cutter: Length,
    allowance: Length,
}

impl Earlier {
    /// Reads a manifest; what else is in it is passed over.
    ///
    /// # Errors
    ///
    /// It is none, or none of this version.
    pub fn read(text: &str) -> Result<Self, ReadError> {
        let mut members = Place::whole(parse(text)?).members()?;
        let format = members.take("format")?;
        if !format.is(FORMAT) {
            return format.refuse(Wanted::Words(vec![FORMAT]));
        }
        members.take("version")?.whole_between(VERSION.into(), VERSION.into())?;
        Ok(Self {
            program: members.take("program")?.text()?,
            name: members.take("name")?.text()?,
            papers: Papers {
                format: named(&members.take("paper")?, &Papers::FORMATS)?,
                labels: named(&members.take("labels")?, &Papers::LABELS)?,
            },
            orders: members.take("orders")?.list(EarlierOrder::read)?,
            lots: members.take("lots")?.list(EarlierLot::read)?,
        })
    }

    /// The number that an order had.
    pub fn number(&self, digest: Digest) -> Option<u32> {
        self.orders.iter().find(|order| order.digest == digest).map(|order| order.number)
    }

    /// By what it was cut. Where its lots differ, by their ranges, each range says it again.
    pub fn cut_by(&self) -> CutBy {
        let mut batches: Vec<(Key, Batch)> = Vec::new();
        for EarlierLot { board, batch, .. } in &self.lots {
            let of_board = self.lots.iter().filter(|other| other.board == *board);
            let is_one = of_board.map(|other| &other.batch).all(|other| other == batch);
            let batch = batch.as_ref().filter(|_| is_one && !batches.iter().any(|(known, _)| known == board));
            batches.extend(batch.map(|batch| (board.clone(), batch.clone())));
        }
        CutBy { batches, cutter: self.common(|lot| lot.cutter), allowance: self.common(|lot| lot.allowance) }
    }

    /// A length that is the same in all lots.
    fn common(&self, of: fn(&EarlierLot) -> Length) -> Option<Length> {
        let first = self.lots.first().map(of)?;
        self.lots.iter().all(|lot| of(lot) == first).then_some(first)
    }
}

impl EarlierOrder {
    fn read(at: Place) -> Result<Self, ReadError> {
        let mut members = at.members()?;
        let number = members.take("number")?.whole_between(1, u32::MAX.into())?;
        Ok(Self {
            number: u32::try_from(number).unwrap_or(u32::MAX),
            digest: members.take("digest")?.parsed()?,
            cut_digest: members.take("cut_digest")?.parsed()?,
        })
    }
}

impl EarlierLot {
    fn read(at: Place) -> Result<Self, ReadError> {
        let mut members = at.members()?;
        Ok(Self {
            board: members.take("board")?.parsed()?,
            batch: members.maybe("measured_mm").map(|at| batch(&at)).transpose()?,
            cutter: length(members.take("cutter_mm")?)?,
            allowance: length(members.take("allowance_mm")?)?,
        })
    }
}

fn length(at: Place) -> Result<Length, ReadError> {
    at.number().map(Length::mm)
}

/// The points of a batch, by the reader of those that are typed.
fn batch(at: &Place) -> Result<Batch, ReadError> {
    let points = at.clone().list(|point| point.number().map(|mm| mm.to_string()))?;
    points.join(" ").parse().or_else(|_| at.refuse(Wanted::List))
}

fn named<T: Copy>(at: &Place, known: &[(&'static str, T)]) -> Result<T, ReadError> {
    let found = known.iter().find(|(name, _)| at.is(name)).map(|(_, thing)| *thing);
    found.map_or_else(|| at.refuse(Wanted::Words(known.iter().map(|(name, _)| *name).collect())), Ok)
}

#[cfg(test)]
mod tests;
