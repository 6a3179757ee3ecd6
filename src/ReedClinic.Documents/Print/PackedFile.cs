using System.Globalization;
using System.IO.Compression;
using System.Text;

namespace ReedClinic.Documents.Print;

/// <summary>
/// A written PDF with its streams compressed. PDFsharp leaves out the check sum at their ends (RFC 1950), which strict readers complain
/// of, so it writes them plain, and here each is compressed by .NET’s zlib and the table of places is written anew (ISO 32000-1, 7.5.4).
/// </summary>
internal static class PackedFile
{
    private const int ShortestPacked = 200;

    public static byte[] Of(byte[] plain)
    {
        var (table, places) = Places(plain);
        var ends = places.Where(place => place > 0).Append(table).Order().ToList();
        using var packed = new MemoryStream(plain.Length / 4);
        packed.Write(plain, 0, ends[0]);
        Dictionary<int, long> moved = [];
        foreach (var (from, to) in ends.Zip(ends.Skip(1)))
        {
            moved[from] = packed.Position;
            Copy(plain.AsSpan(from, to - from), packed);
        }

        var start = packed.Position;
        packed.Write(Ascii($"xref\n0 {places.Count}\n0000000000 65535 f \n"));
        foreach (var place in places.Skip(1))
        {
            packed.Write(Ascii($"{moved[place]:0000000000} 00000 n \n"));
        }

        var trailer = plain.AsSpan(table);
        packed.Write(trailer[trailer.IndexOf("trailer"u8)..(trailer.LastIndexOf("startxref"u8) + "startxref"u8.Length)]);
        packed.Write(Ascii($"\n{start}\n%%EOF\n"));
        return packed.ToArray();
    }

    // Where each object begins, by its number. One table, one line of twenty bytes for each: so PDFsharp writes a new document.
    private static (int Table, List<int> Places) Places(ReadOnlySpan<byte> file)
    {
        var end = file[(file.LastIndexOf("startxref"u8) + "startxref"u8.Length)..];
        var table = Number(end[end.IndexOfAnyInRange((byte)'0', (byte)'9')..]);
        var rows = file[table..];
        rows = rows[(rows.IndexOf("0 "u8) + 2)..];
        var count = Number(rows);
        rows = rows[(rows.IndexOf("\n"u8) + 1)..];
        List<int> places = [];
        for (var row = 0; row < count; row++)
        {
            places.Add(Number(rows[(row * 20)..]));
        }

        return (table, places);
    }

    private static void Copy(ReadOnlySpan<byte> part, MemoryStream packed)
    {
        var begin = part.IndexOf(">>\nstream\n"u8);
        var size = begin < 0 ? -1 : part[..begin].LastIndexOf("/Length "u8);
        var length = size < 0 ? 0 : Number(part[(size + "/Length "u8.Length)..]);
        if (length < ShortestPacked || part[..begin].IndexOf("/Filter"u8) >= 0 || part[..begin].IndexOf("/Metadata"u8) >= 0)
        {
            packed.Write(part);
            return;
        }

        using var data = new MemoryStream(length / 2);
        using (var zlib = new ZLibStream(data, CompressionLevel.Optimal, leaveOpen: true))
        {
            zlib.Write(part.Slice(begin + ">>\nstream\n"u8.Length, length));
        }

        packed.Write(part[..size]);
        packed.Write(Ascii($"/Filter/FlateDecode/Length {data.Length}"));
        packed.Write(part[(size + "/Length "u8.Length + length.ToString(CultureInfo.InvariantCulture).Length)..(begin + ">>\nstream\n"u8.Length)]);
        data.WriteTo(packed);
        packed.Write(part[(begin + ">>\nstream\n"u8.Length + length)..]);
    }

    private static int Number(ReadOnlySpan<byte> digits)
    {
        var number = 0;
        foreach (var digit in digits)
        {
            if (digit is < (byte)'0' or > (byte)'9')
            {
                break;
            }

            number = (number * 10) + digit - '0';
        }

        return number;
    }

    private static byte[] Ascii(FormattableString text) => Encoding.ASCII.GetBytes(text.ToString(CultureInfo.InvariantCulture));
}
