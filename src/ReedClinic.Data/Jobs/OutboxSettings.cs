namespace ReedClinic.Data.Jobs;

/// <summary>What whoever runs the program settled about mail, as far as it concerns what is put out.</summary>
/// <param name="GoesOut">False while no mail is sent.</param>
public sealed record OutboxSettings(bool GoesOut = true);
