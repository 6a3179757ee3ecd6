using Microsoft.Extensions.Localization;

namespace ReedClinic.Web.Features.Recordings;

/// <summary>What a script that records says: why no microphone can be had, and why a take is poor.</summary>
public static class TakeWords
{
    /// <summary>The words, as attributes that the script reads.</summary>
    /// <param name="T">Where they stand.</param>
    public static IReadOnlyDictionary<string, object> Of(IStringLocalizer<RecordingsText> T) => new Dictionary<string, object>
    {
        ["data-no-permission"] = T["MicNoPermission"].Value,
        ["data-no-microphone"] = T["MicNone"].Value,
        ["data-busy"] = T["MicBusy"].Value,
        ["data-unable"] = T["MicUnable"].Value,
        ["data-poor-nothing"] = T["PoorNothing"].Value,
        ["data-poor-clipped"] = T["PoorClipped"].Value,
        ["data-poor-quiet"] = T["PoorQuiet"].Value,
        ["data-poor-begun"] = T["PoorBegun"].Value,
        ["data-poor-noisy"] = T["PoorNoisy"].Value,
        ["data-poor-short"] = T["PoorShort"].Value,
    };
}
