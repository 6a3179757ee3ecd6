using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using ReedClinic.Data.Engine;
using ReedClinic.Domain.Letters;

namespace ReedClinic.Data.Letters;

/// <summary>A letter as it is stored, and a short mark by which two letters are told apart.</summary>
internal static class LetterPayload
{
    internal static JsonSerializerOptions Options { get; } = new(StoredText.Json) { IgnoreReadOnlyProperties = true };

    public static string Write(LetterDraft letter) => JsonSerializer.Serialize(letter, Options);

    public static LetterDraft Read(string payload) =>
        JsonSerializer.Deserialize<LetterDraft>(CrowBefore.Read(payload), Options) ?? throw new FormatException("An empty letter was stored.");

    /// <summary>Changes with any letter of any sentence: what was looked at is what is sent.</summary>
    public static string Mark(LetterDraft letter) =>
        Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(Write(letter))))[..16];

    /// <summary>Adds what was sent to what is about to be saved.</summary>
    public static void AddSent(this ClinicDb db, LetterSent sent) => db.AddRange(sent.Version, sent.Sending);
}
