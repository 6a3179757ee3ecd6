namespace ReedClinic.Documents.Setting;

/// <summary>A face of type.</summary>
public enum Face
{
    /// <summary>The serif that letters are set in.</summary>
    Text,

    /// <summary>Its italic.</summary>
    Slanted,

    /// <summary>Its semibold, for headings.</summary>
    Strong,

    /// <summary>The sans that labels and tables are set in.</summary>
    Label,

    /// <summary>Its italic.</summary>
    LabelSlanted,

    /// <summary>Its semibold.</summary>
    LabelStrong,
}

/// <summary>A tone of ink.</summary>
public enum Tone
{
    /// <summary>What is read.</summary>
    Ink,

    /// <summary>What stands beside it.</summary>
    Pencil,

    /// <summary>What has become better.</summary>
    Good,

    /// <summary>What gave way.</summary>
    Less,
}

/// <summary>How text is set.</summary>
/// <param name="Face">The face.</param>
/// <param name="Size">Its size in points.</param>
/// <param name="Leading">From one base line to the next, in points.</param>
/// <param name="Tone">Its tone.</param>
public readonly record struct TypeStyle(Face Face, double Size, double Leading, Tone Tone = Tone.Ink);

/// <summary>Tells how wide text is.</summary>
public interface ITypeMeasure
{
    /// <summary>The width of a text on one line, in points.</summary>
    /// <param name="text">The text.</param>
    /// <param name="style">How it is set.</param>
    double Width(string text, TypeStyle style);
}
