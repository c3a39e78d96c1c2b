//! How wide the columns of a table are.

use slotwright_core::units::quantity::Length;

use super::Paper;
use super::table::{BOX, Cell, GUTTER, Place, Row, Table, Width, style};
use super::text::Style;

impl Paper {
    /// Where the columns stand: what fits its texts first, then what the shares are of. If that is too much, columns
    /// that fit are made narrower, in proportion, and their texts are broken.
    pub(super) fn places(&self, table: &Table) -> Vec<Place> {
        let gutters = table.columns.iter().skip(1).map(|_| GUTTER).sum::<Length>();
        let all = (self.width() - gutters).max(Length::ZERO);
        let wanted: Vec<(Length, Length)> = (0..table.columns.len()).map(|at| self.wanted(table, at)).collect();
        let of = |least: bool, is: fn(&Width) -> bool| {
            let columns = table.columns.iter().zip(&wanted).filter(|(column, _)| is(&column.width));
            columns.map(|(_, (full, word))| if least { *word } else { *full }).sum::<Length>()
        };
        let fixed = of(false, |width| matches!(width, Width::Fixed(_)));
        let (fit, shared) =
            (of(false, |width| matches!(width, Width::Fit)), of(true, |width| matches!(width, Width::Share(_))));
        let free = (all - fixed - shared).max(Length::ZERO);
        let squeeze = if fit > free { free / fit } else { 1.0 };
        let shares = table.columns.iter().map(|column| share(column.width)).sum::<f64>().max(1e-9);
        let left = (all - fixed - fit * squeeze).max(Length::ZERO);
        let mut x = self.margins.left;
        let mut places = Vec::with_capacity(table.columns.len());
        for (column, (full, _)) in table.columns.iter().zip(&wanted) {
            let width = match column.width {
                Width::Fit => *full * squeeze,
                Width::Share(share) => left * (share.max(0.0) / shares),
                Width::Fixed(width) => width,
            };
            places.push(Place { x, width, align: column.align });
            x += width + GUTTER;
        }
        places
    }

    /// How wide a column is without a break in its texts, and how wide its longest word is.
    fn wanted(&self, table: &Table, at: usize) -> (Length, Length) {
        let Some(column) = table.columns.get(at) else { return (Length::ZERO, Length::ZERO) };
        if let Width::Fixed(width) = column.width {
            return (width, width);
        }
        let name = self.faces.longest_word(&column.name, &Style::NAME);
        let full = self.faces.longest_line(&column.name, &Style::NAME);
        let mut widest = (if full < Length::mm(18.0) { full } else { name }, name);
        for row in &table.rows {
            let (cells, total) = match row {
                Row::Cells(cells) => (cells, false),
                Row::Total(cells) => (cells, true),
                Row::Group(_) => continue,
            };
            let Some(cell) = cells.get(at) else { continue };
            let style = style(cell, total);
            let (full, word) = match cell {
                Cell::Text(text) | Cell::Strong(text) | Cell::Soft(text) => {
                    (self.faces.longest_line(text, &style), self.faces.longest_word(text, &style))
                }
                Cell::Tick => (self.faces.length(BOX, &style), self.faces.length(BOX, &style)),
                Cell::Picture(vector, _) => (vector.width, vector.width),
            };
            widest = (widest.0.max(full), widest.1.max(word));
        }
        widest
    }
}

fn share(width: Width) -> f64 {
    match width {
        Width::Share(share) => share.max(0.0),
        Width::Fit | Width::Fixed(_) => 0.0,
    }
}
