using System.Globalization;
using System.Text.Json.Nodes;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Data.Letters;

/// <summary>
/// Letters that were kept at first hold a crow’s way as it was drawn then, in places on the drawing. It is read back into
/// passes and cents: the target’s band, whose width in cents is known, gives the scale.
/// </summary>
internal static class CrowBefore
{
    /// <summary>The letter with each crow’s way in passes and cents.</summary>
    /// <param name="payload">A letter as JSON.</param>
    public static string Read(string payload)
    {
        if (!payload.Contains("\"Dots\":", StringComparison.Ordinal))
        {
            return payload;
        }

        var letter = JsonNode.Parse(payload)!;
        foreach (var reed in letter["Reeds"]!.AsArray().Where(reed => reed?["Crow"]?["Dots"] is not null))
        {
            reed!["Crow"] = Crow(reed["Crow"]!);
        }

        return letter.ToJsonString(LetterPayload.Options);
    }

    private static JsonObject Crow(JsonNode crow)
    {
        var aim = (double)crow["Aim"]!;
        var unit = ((double)crow["BandFoot"]! - (double)crow["BandTop"]!) / (2 * CrowTarget.ToleranceCents);
        double Cents(JsonNode? y) => Math.Round((aim - (double)y!) / unit, 1);
        var dots = crow["Dots"]!.AsArray();
        var pass = 0;
        return new JsonObject
        {
            ["Note"] = (string)crow["Note"]!,
            ["Sentence"] = (string)crow["Sentence"]!,
            ["Heard"] = new JsonArray([.. dots.Select(dot => (JsonNode)new JsonObject
            {
                ["Pass"] = pass = int.TryParse((string)dot!["Label"]!, NumberStyles.None, CultureInfo.InvariantCulture, out var own) ? own : pass,
                ["Low"] = Cents(dot["Foot"]),
                ["High"] = Cents(dot["Top"]),
            })]),
            ["Moves"] = new JsonArray([.. crow["Steps"]!.AsArray().Select((step, index) => (JsonNode)Move(crow, (string)step!, (double)dots[index]!["X"]!, (double)dots[index + 1]!["X"]!))]),
        };
    }

    private static JsonObject Move(JsonNode crow, string sentence, double from, double to)
    {
        var end = sentence.LastIndexOf(": ", StringComparison.Ordinal);
        var lines = crow["Words"]!.AsArray().FirstOrDefault(words => Math.Abs((double)words!["X"]! - ((from + to) / 2)) < 1)?["Lines"]?.AsArray().Select(line => (string)line!).ToList() ?? [];

        // What was shortened on the drawing stands whole in its sentence.
        var work = lines.Exists(line => line.EndsWith('…') || line.StartsWith('+')) ? [end < 0 ? sentence : sentence[..end]] : lines;
        return new JsonObject
        {
            ["Work"] = new JsonArray([.. work.Select(words => (JsonNode)words)]),
            ["Change"] = end < 0 ? "" : sentence[(end + 2)..],
            ["Sentence"] = sentence,
            ["HasGap"] = ((string)crow["Gaps"]!).Contains(string.Create(CultureInfo.InvariantCulture, $"M{from:0.#},"), StringComparison.Ordinal),
        };
    }
}
