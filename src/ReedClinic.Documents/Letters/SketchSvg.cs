using System.Globalization;
using System.Text;
using ReedClinic.Domain.Drawings;

namespace ReedClinic.Documents.Letters;

/// <summary>A drawing as SVG that needs nothing else: its colours stand in it. Marks are told apart by their numbers and their lines too.</summary>
internal static class SketchSvg
{
    private static readonly Dictionary<SketchInk, string> Inks = new()
    {
        [SketchInk.Cane] = "fill=\"#f3e3c3\"",
        [SketchInk.Bark] = "fill=\"#c8963e\" fill-opacity=\".42\"",
        [SketchInk.Pale] = "fill=\"#faf4e6\"",
        [SketchInk.Grain] = "stroke=\"#c8963e\"",
        [SketchInk.Line] = "stroke=\"#1e2a2f\" stroke-width=\"1.9\"",
        [SketchInk.ZoneLine] = "stroke=\"#1e2a2f\" stroke-width=\"1.5\"",
        [SketchInk.SoftLine] = "stroke=\"#c8963e\" stroke-width=\"1.1\"",
        [SketchInk.Thread] = "fill=\"#f2eadb\" stroke=\"#1e2a2f\" stroke-width=\"1.4\"",
        [SketchInk.Turns] = "stroke=\"#4b575c\" stroke-width=\"1.3\"",
        [SketchInk.Metal] = "fill=\"#dde2e6\" stroke=\"#1e2a2f\" stroke-width=\"1.4\"",
        [SketchInk.Plaque] = "fill=\"#1e2a2f\"",
        [SketchInk.Hand] = "fill=\"#f7eee4\" stroke=\"#1e2a2f\" stroke-width=\"1.4\"",
        [SketchInk.Gap] = "fill=\"#fff\"",
        [SketchInk.Strength] = Mark("#2f6b4f", ""),
        [SketchInk.Fault] = Mark("#a8452e", "7 3"),
        [SketchInk.Taste] = Mark("#6a4470", "1 3"),
        [SketchInk.StrengthSuspected] = Mark("#2f6b4f", ".1 4", ".1"),
        [SketchInk.FaultSuspected] = Mark("#a8452e", ".1 4", ".1"),
        [SketchInk.TasteSuspected] = Mark("#6a4470", ".1 4", ".1"),
        [SketchInk.Worked] = Mark("#3f566e", "", ".18"),
        [SketchInk.WorkedTwice] = Mark("#3f566e", "", ".3"),
        [SketchInk.WorkedOften] = Mark("#3f566e", "", ".45"),
        [SketchInk.LeaveAlone] = "stroke=\"#1e2a2f\" stroke-width=\"1.6\" stroke-dasharray=\"5 3\"",
        [SketchInk.Leader] = "stroke=\"#1e2a2f\" stroke-width=\".9\"",
        [SketchInk.Disc] = "fill=\"#fff\" stroke=\"#1e2a2f\" stroke-width=\"1.2\"",
        [SketchInk.Arrow] = "stroke=\"#1e2a2f\" stroke-width=\"2.3\" stroke-linecap=\"round\"",
        [SketchInk.Band] = "fill=\"#e4efe6\"",
        [SketchInk.Aim] = "stroke=\"#2f6b4f\" stroke-width=\"1.5\" stroke-dasharray=\"2 4\"",
        [SketchInk.Way] = "stroke=\"#1e2a2f\" stroke-width=\"2.2\"",
        [SketchInk.WayGap] = "stroke=\"#4b575c\" stroke-width=\"1.4\" stroke-dasharray=\"4 5\"",
        [SketchInk.Range] = "stroke=\"#1e2a2f\" stroke-width=\"6\" stroke-opacity=\".35\" stroke-linecap=\"round\"",
        [SketchInk.Point] = "fill=\"#fff\" stroke=\"#1e2a2f\" stroke-width=\"2.2\"",
        [SketchInk.LastPoint] = "fill=\"#1e2a2f\" stroke=\"#1e2a2f\" stroke-width=\"2.2\"",
    };

    /// <summary>The drawing, with what it shows for whoever doesn't see it.</summary>
    /// <param name="sketch">The drawing.</param>
    public static string Of(Sketch sketch)
    {
        var svg = new StringBuilder();
        svg.Append(Say($"<svg viewBox=\"0 0 {sketch.Width:0.##} {sketch.Height:0.##}\" role=\"img\" aria-label=\"{Escaped.Text($"{sketch.Title}. {sketch.Description}")}\" fill=\"none\" stroke-linejoin=\"round\">\n"));
        foreach (var part in sketch.Parts)
        {
            svg.Append(Of(part, sketch.Type)).Append('\n');
        }

        return svg.Append("</svg>\n").ToString();
    }

    private static string Of(SketchPart part, double type) => part switch
    {
        SketchPath path => Say($"<path {Inks[path.Ink]} d=\"{Escaped.Text(path.Data)}\"{(path is { X: 0, Y: 0 } ? "" : Say($" transform=\"translate({path.X:0.##} {path.Y:0.##})\""))}/>"),
        SketchDot dot => Say($"<circle {Inks[dot.Ink]} cx=\"{dot.X:0.##}\" cy=\"{dot.Y:0.##}\" r=\"{dot.Radius:0.##}\"/>"),
        SketchWords words => Words(words, type),
        _ => "",
    };

    private static string Words(SketchWords words, double type)
    {
        var face = words.Type switch
        {
            SketchType.Name or SketchType.Step => "fill=\"#4b575c\" font-family=\"Georgia,serif\" font-style=\"italic\"",
            SketchType.Number => "fill=\"#1e2a2f\" font-family=\"sans-serif\" font-weight=\"bold\"",
            _ => "fill=\"#4b575c\" font-family=\"sans-serif\"",
        };
        var size = words.Type == SketchType.Number && words.Text.Length > 1 ? 11 : 14;
        var anchor = words.Align switch { SketchAlign.Start => "start", SketchAlign.Middle => "middle", _ => "end" };
        return Say($"<text {face} font-size=\"{size * type:0.##}\" text-anchor=\"{anchor}\" x=\"{words.X:0.##}\" y=\"{words.Y:0.##}\">{Escaped.Text(words.Text)}</text>");
    }

    private static string Mark(string tone, string dashes, string opacity = ".22") =>
        $"fill=\"{tone}\" fill-opacity=\"{opacity}\" stroke=\"{tone}\" stroke-width=\"1.8\"{(dashes.Length == 0 ? "" : $" stroke-linecap=\"{(dashes[0] == '.' ? "round" : "butt")}\" stroke-dasharray=\"{dashes}\"")}";

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
