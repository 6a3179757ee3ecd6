namespace ReedClinic.Domain.Faults;

/// <summary>How a statement of the trade is known.</summary>
public enum Evidence
{
    /// <summary>Read in a published text, which is named.</summary>
    Published,

    /// <summary>Remembered from the literature of the trade, and not checked.</summary>
    FromMemory,

    /// <summary>What most teachers say, without a source. Never to be shown as a fact with a citation.</summary>
    CommonPractice,

    /// <summary>Worked out from a stated formula.</summary>
    Calculated,

    /// <summary>A default of this program, without a source of its own, until the studio says otherwise.</summary>
    OwnDefault,

    /// <summary>Said by this studio’s owner, of an entry of its own: common practice here, without a source.</summary>
    StudioOwn,

    /// <summary>Stands on this reed’s own record: what the student asked for, or what was written in its log.</summary>
    OnRecord,
}

/// <summary>A mark beside a statement: how it is known and, for a published one, where it stands.</summary>
/// <param name="Evidence">How it is known.</param>
/// <param name="Source">The source, in a form that can be looked up; null for common practice.</param>
public sealed record EvidenceMark(Evidence Evidence, string? Source = null)
{
    /// <summary>Common practice, without a source.</summary>
    public static EvidenceMark CommonPractice { get; } = new(Evidence.CommonPractice);

    /// <summary>A default of this program.</summary>
    public static EvidenceMark OwnDefault { get; } = new(Evidence.OwnDefault);

    /// <summary>Said by this studio’s owner.</summary>
    public static EvidenceMark StudioOwn { get; } = new(Evidence.StudioOwn);

    /// <summary>Read in a published text.</summary>
    /// <param name="source">The text.</param>
    /// <returns>The mark.</returns>
    public static EvidenceMark Published(string source) => new(Evidence.Published, source);
}
