using System.Text.Encodings.Web;
using System.Text.Json;

namespace ReedClinic.Data.Engine;

/// <summary>How typed text is kept as JSON in the database.</summary>
public static class StoredText
{
    /// <summary>
    /// Letters stay letters. The usual encoder escapes all but ASCII for the sake of web pages, six characters for one,
    /// and a draft in Greek would reach its limit six times as soon. Nothing that is kept so is ever put into a page as JSON.
    /// </summary>
    public static JsonSerializerOptions Json { get; } = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
}
