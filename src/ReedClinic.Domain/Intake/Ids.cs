namespace ReedClinic.Domain.Intake;

/// <summary>One question that a student asked.</summary>
/// <param name="Value">A version 7 identifier; it never orders anything.</param>
public readonly record struct QuestionId(Guid Value);

/// <summary>An intake that is still being written.</summary>
/// <param name="Value">A version 7 identifier; it never orders anything.</param>
public readonly record struct DraftId(Guid Value);
