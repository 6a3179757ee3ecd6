using System.Collections.Concurrent;
using System.Reflection;
using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;
using ReedClinic.Documents.Setting;

namespace ReedClinic.Documents.Print;

/// <summary>
/// The faces that letters are printed with, from the program itself: Noto Serif and Source Sans 3, and for ♯ ♭ ♮ and other signs that
/// they don't have DejaVu Serif. All of them may be embedded (SIL Open Font License; Bitstream Vera licence).
/// </summary>
internal sealed class PrintFonts : IFontResolver
{
    private const string Signs = "DejaVuSerif";

    private static readonly XPdfFontOptions Options = new(PdfFontEncoding.Unicode);
    private static readonly ConcurrentDictionary<(string Name, double Size), XFont> Fonts = new();
    private static readonly ConcurrentDictionary<(string Name, int Sign), bool> Known = new();

    // What is asked for every letter of every text: of each face, which of the first 65536 signs it has (1) and hasn't (2); 0 is not known yet.
    private static readonly byte[][] Usual = [.. Enumerable.Range(0, Enum.GetValues<Face>().Length + 1).Select(_ => new byte[char.MaxValue + 1])];

    static PrintFonts() => GlobalFontSettings.FontResolver = new PrintFonts();

    private PrintFonts()
    {
    }

    public static XFont Of(Face face, double size) => Of(Name(face), size);

    public static XFont SignsOf(double size) => Of(Signs, size);

    public static bool Has(Face face, int sign) => Has(Usual[(int)face], Name(face), sign);

    public static bool SignsHave(int sign) => Has(Usual[^1], Signs, sign);

    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) => new(familyName);

    public byte[]? GetFont(string faceName)
    {
        using var file = Assembly.GetExecutingAssembly().GetManifestResourceStream(faceName + ".ttf")
            ?? throw new InvalidOperationException($"The face {faceName} is not in the program.");
        var bytes = new byte[file.Length];
        file.ReadExactly(bytes);
        return bytes;
    }

    private static XFont Of(string name, double size) => Fonts.GetOrAdd((name, size), key => new XFont(key.Name, key.Size, XFontStyleEx.Regular, Options));

    private static bool Has(byte[] usual, string name, int sign)
    {
        if (sign > char.MaxValue)
        {
            return Has(name, sign);
        }

        if (usual[sign] == 0)
        {
            usual[sign] = Has(name, sign) ? (byte)1 : (byte)2;
        }

        return usual[sign] == 1;
    }

    private static bool Has(string name, int sign) => Known.GetOrAdd((name, sign), key => GlyphHelper.GlyphIndexFromCodePoint(key.Sign, Of(key.Name, 10)) != 0);

    private static string Name(Face face) => face switch
    {
        Face.Text => "NotoSerif_400Regular",
        Face.Slanted => "NotoSerif_400Regular_Italic",
        Face.Strong => "NotoSerif_600SemiBold",
        Face.LabelSlanted => "SourceSans3_400Regular_Italic",
        Face.LabelStrong => "SourceSans3_600SemiBold",
        _ => "SourceSans3_400Regular",
    };
}
