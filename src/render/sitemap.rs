//! The list of pages for search engines, and the file that names it (sitemaps.org protocol 0.9, RFC 9309).

use super::whole_address;
use crate::page::{Page, Shown};
use quick_xml::Writer;
use quick_xml::events::{BytesDecl, BytesText, Event};
use std::io;

/// Returns `sitemap.xml` for the pages.
pub fn sitemap(shown: &Shown<'_>, pages: &[Page]) -> Vec<u8> {
    // Writing to memory cannot fail.
    write(shown, pages).unwrap_or_default()
}

/// Returns `robots.txt`, which keeps nobody out and names the list of pages.
pub fn robots(shown: &Shown<'_>) -> String {
    format!("User-agent: *\nAllow: /\n\nSitemap: {}\n", shown.addresses.whole("sitemap.xml"))
}

fn write(shown: &Shown<'_>, pages: &[Page]) -> io::Result<Vec<u8>> {
    let mut writer = Writer::new_with_indent(Vec::new(), b' ', 1);
    writer.write_event(Event::Decl(BytesDecl::new("1.0", Some("UTF-8"), None)))?;
    writer
        .create_element("urlset")
        .with_attribute(("xmlns", "http://www.sitemaps.org/schemas/sitemap/0.9"))
        .write_inner_content(|writer| {
            for page in pages.iter().filter(|page| page.is_listed()) {
                writer.create_element("url").write_inner_content(|writer| {
                    writer
                        .create_element("loc")
                        .write_text_content(BytesText::new(&whole_address(&shown.addresses, &page.file)))?;
                    Ok(())
                })?;
            }
            Ok(())
        })?;
    let mut xml = writer.into_inner();
    xml.push(b'\n');
    Ok(xml)
}
